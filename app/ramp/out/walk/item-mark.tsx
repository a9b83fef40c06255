import { useWords } from '#words';
import { Tag } from '../../../_ui/tag';
import { type ItemSoFar } from './so-far';

/** How an item stands, in a word. Nothing is said of what nobody has looked at: the list is full of it. */
export function ItemMark({ soFar }: { soFar: ItemSoFar }) {
  const t = useWords();
  const { verdict, written } = soFar;
  if (written > 0) {
    return (
      <Tag tone="amber" shape="wedge" size="small">
        {t('Written up')}
      </Tag>
    );
  }
  if (verdict.answer === 'finding') {
    return (
      <Tag tone="amber" shape="wedge" size="small">
        {t('Finding')}
      </Tag>
    );
  }
  return verdict.answer === 'good' ? (
    <Tag tone="grey" shape="tick" size="small">
      {t('Good')}
    </Tag>
  ) : null;
}
