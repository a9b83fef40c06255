import { type PhotoView } from '@/lib/photos/view';
import { PhotoList } from '../../_ui/photo-list';

/** Photos of a write-up, as the ramp shows them. */
export function Pictures({ photos, of }: { photos: readonly PhotoView[]; of: string }) {
  return (
    <PhotoList photos={photos} from="ramp" alt={(number) => `${of}, number ${number} of ${photos.length}`} />
  );
}
