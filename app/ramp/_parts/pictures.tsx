import { useWords } from '#words';
import { type PhotoView } from '@/lib/photos/view';
import { PhotoList } from '../../_ui/photo-list';

/** Photos of a write-up, as the ramp shows them. */
export function Pictures({ photos, of }: { photos: readonly PhotoView[]; of: string }) {
  const t = useWords();
  return (
    <PhotoList
      photos={photos}
      from="ramp"
      alt={(number) => t('{of}, number {number} of {photos}', { of, number, photos: photos.length })}
    />
  );
}
