import { useWords } from '#words';
import { AUTHORITIES, AUTHORITY_WORDS, type LineColumns } from '@/lib/equipment/line';
import { dateInWords } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { LinkButton } from '@/app/_ui/button';
import { type LineView } from '@/lib/equipment/read-equipment';
import styles from '../fleet.module.css';

/** One line of the list in words, with who signed for it. */
export function LineItem({ line, href }: { line: LineView; href: string | null }) {
  const t = useWords();
  return (
    <li className={styles.item}>
      <div className={styles.head}>
        <span className={styles.name}>{line.name}</span>
        {line.confirmed ? (
          <Tag tone="green" size="small">
            {line.vouched ? t('Confirmed') : t('From before')}
          </Tag>
        ) : (
          <Tag tone="amber" size="small">
            {t('Not confirmed')}
          </Tag>
        )}
      </div>
      <p>
        <span lang="en">{line.system}</span>. <LineSays line={line} />
      </p>
      {line.vouched && (
        <p className={styles.soft}>
          {t('Signed by {by}, {on}. Document: {source}', {
            by: line.vouched.by,
            on: dateInWords(line.vouched.on),
            source: line.vouched.source,
          })}
        </p>
      )}
      {href && (
        <div className={styles.acts}>
          <LinkButton href={href}>{t('Change or take off')}</LinkButton>
        </div>
      )}
    </li>
  );
}

/** How many are installed and required, and by what authority. */
export function LineSays({ line }: { line: LineColumns }) {
  const t = useWords();
  const { requiredDayVfr, requiredNightVfr, requiredDayIfr, requiredNightIfr, vfrDayTypeDesign } = line;
  const required =
    requiredDayVfr === null
      ? t('How many are required is not known yet.')
      : t('Required: day VFR {dayVfr}, night VFR {nightVfr}, day IFR {dayIfr}, night IFR {nightIfr}.', {
          dayVfr: requiredDayVfr,
          nightVfr: requiredNightVfr ?? 0,
          dayIfr: requiredDayIfr ?? 0,
          nightIfr: requiredNightIfr ?? 0,
        });
  const design =
    vfrDayTypeDesign === null
      ? t('Whether it is VFR-day type design is not known yet.')
      : vfrDayTypeDesign
        ? t('VFR-day type design.')
        : t('Not VFR-day type design.');
  const authority = AUTHORITIES.filter((one) => line.authority.includes(one)).map((one) =>
    t(AUTHORITY_WORDS[one]),
  );
  return (
    <>
      {t('Installed: {installed}.', { installed: line.installed })} {required} {design}
      {authority.length > 0 && ` ${t('By: {authority}.', { authority: authority.join(', ') })}`}
    </>
  );
}
