import { useWords } from '#words';
import { type CarriedMark as Mark } from '@/lib/records/carried-mark';
import { dateInWords } from './moment';
import { Tag } from './tag';

/** Beside something that was carried over from paper: that it was, who vouches for it, and from which document. */
export function CarriedMark({ mark, short = false }: { mark: Mark; short?: boolean }) {
  const t = useWords();
  const { by, on, source } = mark;
  return (
    <>
      <Tag tone="grey" shape="up" size="small">
        {t('Carried over')}
      </Tag>
      {!short && (
        <span>
          {' '}
          {t('Vouched for by {by}, {on}. Document: {source}', { by, on: dateInWords(on), source })}
        </span>
      )}
    </>
  );
}
