'use client';

import { Say, useWords } from '#words';
import { useEffect, useRef, useState } from 'react';
import { Button, ButtonRow } from '@/app/_ui/button';
import { Moment } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { type LinkMade } from '@/lib/people/invite-person';
import { QrDrawing } from './qr-drawing';
import styles from './people.module.css';

/** What came of making a link: a sheet to print, shown this once, or that the letter is on its way. */
export function LinkSheet({ link, name, zone }: { link: LinkMade; name: string; zone: string }) {
  const t = useWords();
  if (link.handedOver === 'mail') {
    return (
      <Notice tone="blue" title={t('The letter to {name} is on its way.', { name })}>
        <p>
          <Say
            text="Its link works once, until {until}."
            values={{ until: <Moment at={link.expiresAt} zone={zone} /> }}
          />
        </p>
      </Notice>
    );
  }
  if (link.token === null) {
    return (
      <Notice tone="amber" title={t('This link was made already.')}>
        <p>
          {t(
            'It was shown then and cannot be shown again. If nobody has it, make a new one: the old one ends with it.',
          )}
        </p>
      </Notice>
    );
  }
  return (
    <Sheet address={`${window.location.origin}/join#${link.token}`} link={link} name={name} zone={zone} />
  );
}

function Sheet({
  address,
  link,
  name,
  zone,
}: {
  address: string;
  link: LinkMade;
  name: string;
  zone: string;
}) {
  const t = useWords();
  const sheet = useRef<HTMLElement>(null);
  const [copied, setCopied] = useState('');
  useEffect(() => sheet.current?.focus(), [address]);
  async function copy() {
    try {
      await navigator.clipboard.writeText(address);
      setCopied(t('Copied.'));
    } catch {
      setCopied(t('Not copied. Mark the address and copy it with the keyboard.'));
    }
  }
  return (
    <section ref={sheet} tabIndex={-1} className={styles.sheet} aria-labelledby="link-sheet">
      <h2 id="link-sheet">{t('For {name}', { name })}</h2>
      <p>{t('Open this address, or scan the code, and choose a password. Then you can sign in.')}</p>
      <QrDrawing text={address} />
      <p>
        <code>{address}</code>
      </p>
      <p>
        <Say
          text="It works once, until {until}. Whoever has it can choose the password: give it to nobody else."
          values={{ until: <Moment at={link.expiresAt} zone={zone} /> }}
        />
      </p>
      <div className="not-on-paper">
        <p className={styles.soft}>{t('It is shown this once and kept nowhere.')}</p>
        <ButtonRow>
          <Button weight="main" onClick={() => window.print()}>
            {t('Print')}
          </Button>
          <Button onClick={() => void copy()}>{t('Copy the address')}</Button>
          <span role="status">{copied}</span>
        </ButtonRow>
      </div>
    </section>
  );
}
