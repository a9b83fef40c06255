import { type ReactNode } from 'react';
import styles from './data-table.module.css';

/**
 * A table that scrolls sideways inside its own frame when the screen is narrow. `head` gives the column headings,
 * children are the rows; a row's first cell should be `<th scope="row">`.
 */
export function DataTable(props: {
  caption: string;
  head: readonly ReactNode[];
  children: ReactNode;
  captionOutOfSight?: boolean;
}) {
  const { caption, head, children, captionOutOfSight = false } = props;
  return (
    // A scrolling frame must be reachable by keyboard (WCAG 2.1.1), hence the tab stop on a region.
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <div className={styles.frame} role="region" aria-label={caption} tabIndex={0}>
      <table className={styles.table}>
        <caption className={captionOutOfSight ? 'out-of-sight' : styles.caption}>{caption}</caption>
        <thead>
          <tr>
            {head.map((cell, index) => (
              <th key={index} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </div>
  );
}
