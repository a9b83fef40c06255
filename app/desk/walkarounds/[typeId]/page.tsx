import { Say } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import Link from '@/app/_ui/link';
import { requireActor } from '@/app/_session/actor-ref';
import { mayUse } from '@/lib/access/policy';
import { Moment } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { PROBLEMS } from '@/lib/problems';
import { AREA_KEYS, areaTitle } from '@/lib/rules/walkaround/areas';
import { measuredChoices } from '@/lib/walkarounds/measured-choices';
import { readLists } from '@/lib/walkarounds/read-lists';
import { Refused } from '../../refused';
import { ListEditor } from '../list-editor';
import { ListShown } from '../list-shown';
import styles from '../walkarounds.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Walkaround list') };
}

interface Props {
  params: Promise<{ typeId: string }>;
  searchParams: Promise<{ version?: string | string[] }>;
}

/** The walkaround list of one type: the manager's editor, everybody's view, and every earlier version. */
export default async function WalkaroundListPage({ params, searchParams }: Props) {
  const t = await words();
  const { typeId } = await params;
  const asked = (await searchParams).version;
  const { ref, who } = await requireActor(`/desk/walkarounds/${encodeURIComponent(typeId)}`);
  const lists = await readLists(ref, {});
  if (!lists.ok) return <Refused who={who} title={t('Walkaround list')} problem={lists.problem} />;
  const type = lists.value.find((one) => one.typeId === typeId);
  if (!type) {
    const problem = { code: 'not_found', say: PROBLEMS.not_found.say } as const;
    return <Refused who={who} title={t('Walkaround list')} problem={problem} />;
  }
  const { current, versions } = type;
  const earlier = versions.find((one) => String(one.version) === asked && one.version !== current.version);
  const mayWrite = mayUse(who.roles, 'walkaround-list.write');
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk/walkarounds', label: t('Walkaround lists') }}
        lead={
          type.aircraft.length > 0
            ? t('Walked on {aircraft}.', { aircraft: type.aircraft.join(', ') })
            : t('No aircraft in service.')
        }
      >
        {type.typeName}
      </PageTitle>
      {current.version === 0 && !earlier && (
        <Notice tone="amber" title={t('This is the starting list, not fitted to this type yet.')}>
          <p>
            {t(
              'Hold it against the aircraft’s own manual: stations, drains, and every limit with its source. Save it when it is right.',
            )}
          </p>
        </Notice>
      )}
      {earlier ? (
        <Section title={t('Version {version}', { version: earlier.version })}>
          <p>
            <Say
              text="An earlier version, as it was. <link>To the current one</link>"
              parts={{ link: <Link href={`/desk/walkarounds/${typeId}`} /> }}
            />
          </p>
          <ListShown list={earlier.list} />
        </Section>
      ) : (
        <Section
          title={
            current.version === 0
              ? t('The starting list')
              : t('Version {version}', { version: current.version })
          }
        >
          {mayWrite ? (
            <ListEditor
              key={current.version}
              typeId={typeId}
              fromVersion={current.version}
              list={current.list}
              areas={AREA_KEYS.map((area) => ({ value: area, label: t(areaTitle(area)) }))}
              measurements={measuredChoices()}
            />
          ) : (
            <ListShown list={current.list} />
          )}
        </Section>
      )}
      {versions.length > 0 && (
        <Section title={t('Versions')}>
          <ul className={styles.versions}>
            {versions.map((one) => (
              <li key={one.id} className={styles.version}>
                <p>
                  {one.version === current.version ? (
                    <b>{t('Version {version}, current', { version: one.version })}</b>
                  ) : (
                    <Link href={`/desk/walkarounds/${typeId}?version=${one.version}`}>
                      {t('Version {version}', { version: one.version })}
                    </Link>
                  )}
                  {', '}
                  {one.madeBy}, <Moment at={one.madeAt} zone={type.zone} />
                </p>
                <p>{one.why}</p>
                <p className={styles.soft}>
                  {t('{which} by it.', {
                    which:
                      one.walked === 1
                        ? t('1 walkaround')
                        : t('{walked} walkarounds', { walked: one.walked }),
                  })}
                </p>
              </li>
            ))}
          </ul>
        </Section>
      )}
    </Shell>
  );
}
