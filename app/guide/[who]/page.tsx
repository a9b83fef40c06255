import { type Metadata } from 'next';
import Image from 'next/image';
import { notFound } from 'next/navigation';
import { BareShell } from '../../_ui/bare-shell';
import { PageTitle } from '../../_ui/page';
import { words } from '../../_words/words';
import { GuideLinks } from '../guide-links';
import { GUIDES, isReader, type Guide } from '../guides';
import { PICTURE_SIZES } from '../picture-sizes';
import styles from '../guide.module.css';

interface Props {
  params: Promise<{ who: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { who } = await params;
  return isReader(who) ? { title: (await words())(GUIDES[who].title) } : {};
}

/** A five-minute guide. Nobody has to be signed in for it: somebody may read it before the first day. */
export default async function GuidePage({ params }: Props) {
  const { who } = await params;
  if (!isReader(who)) notFound();
  const t = await words();
  const guide = GUIDES[who];
  return (
    <BareShell>
      <PageTitle lead={t(guide.lead)} back={{ href: '/', label: t('To your work') }}>
        {t(guide.title)}
      </PageTitle>
      <ol className={styles.steps}>
        {guide.steps.map((step) => (
          <li key={step.picture} className={styles.step}>
            <h2>{t(step.title)}</h2>
            {step.words.map((sentence) => (
              <p key={sentence}>{t(sentence)}</p>
            ))}
            <Picture guide={guide} name={step.picture} shows={t(step.shows)} />
          </li>
        ))}
      </ol>
      <GuideLinks except={guide.reader} />
    </BareShell>
  );
}

/** Width and height are said beforehand, so that nothing jumps when the picture comes. */
function Picture({ guide, name, shows }: { guide: Guide; name: string; shows: string }) {
  return (
    <Image
      src={`/guide/${name}.webp`}
      alt={shows}
      {...PICTURE_SIZES[guide.device]}
      unoptimized
      className={`${styles.picture} ${guide.device === 'phone' ? styles.ofPhone : ''}`}
    />
  );
}
