import { Tag } from '../../../_ui/tag';
import { type ItemSoFar } from './so-far';

/** How an item stands, in a word. Nothing is said of what nobody has looked at: the list is full of it. */
export function ItemMark({ soFar }: { soFar: ItemSoFar }) {
  const { verdict, written } = soFar;
  if (written > 0) {
    return (
      <Tag tone="amber" shape="wedge" size="small">
        Written up
      </Tag>
    );
  }
  if (verdict.answer === 'finding') {
    return (
      <Tag tone="amber" shape="wedge" size="small">
        Finding
      </Tag>
    );
  }
  return verdict.answer === 'good' ? (
    <Tag tone="grey" shape="tick" size="small">
      Good
    </Tag>
  ) : null;
}
