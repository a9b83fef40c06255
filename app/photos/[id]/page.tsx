import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { readPhotoPage } from '@/lib/photos/read-photo';
import { requireActor } from '../../_session/actor-ref';
import { MarkedPhoto } from '../../_ui/marked-photo';
import { PageTitle } from '../../_ui/page';
import { Shell } from '../../_ui/shell';
import { PlainProblem } from '../../ramp/_parts/plain-problem';
import styles from './photo.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Photo') };
}
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ from?: string | string[] }>;
}

/** One photo as large as the screen, with what was drawn on it. Leads back to the write-up where one came from. */
export default async function PhotoPage({ params, searchParams }: Props) {
  const t = await words();
  const { id } = await params;
  const from = (await searchParams).from === 'bench' ? 'bench' : 'ramp';
  const { ref, who } = await requireActor(`/photos/${id}?from=${from}`);
  const read = await readPhotoPage(ref, { photoId: id });
  if (!read.ok) return <PlainProblem who={who} problem={read.problem} />;
  const { photo, writeUp } = read.value;
  const address = `/api/photos/${photo.id}`;
  const name = writeUp ? t('Photo of {number}', { number: writeUp.number }) : t('Photo');
  return (
    <Shell who={who}>
      <PageTitle
        back={
          writeUp
            ? { href: `/${from}/write-up/${writeUp.id}`, label: writeUp.number }
            : { href: `/${from}`, label: t('Back') }
        }
        lead={writeUp?.title}
      >
        {name}
      </PageTitle>
      <figure className={styles.figure}>
        <MarkedPhoto
          src={address}
          alt={writeUp ? `${name}: ${writeUp.title}` : name}
          width={photo.width}
          height={photo.height}
          marks={photo.marks}
          className={styles.photo}
        />
        <figcaption>
          <a href={address} target="_blank" rel="noopener" className={styles.alone}>
            {photo.marks.length > 0 ? t('Open the picture without the marks') : t('Open the picture alone')}
          </a>
        </figcaption>
      </figure>
    </Shell>
  );
}
