'use client';

import { useWords } from '#words';
import { zodResolver } from '@hookform/resolvers/zod';
import { useEffect, useRef } from 'react';
import { FormProvider, useForm, type Resolver } from 'react-hook-form';
import { Button, ButtonRow } from '@/app/_ui/button';
import button from '@/app/_ui/button.module.css';
import { Cite } from '@/app/_ui/cite';
import { Section } from '@/app/_ui/page';
import { type LineView } from '@/lib/equipment/read-equipment';
import { wholeLine } from '@/lib/equipment/schema';
import { WhatDocumentsSay, WhatItIs } from '../../../../_parts/line-fields';
import { lineAsTyped, type LineAsTyped } from '../../../../_parts/line-typed';
import styles from '../../../../fleet.module.css';

/** One item with what the list says of it, to be put right and agreed to. Enter agrees. */
export function OneItem(props: {
  line: LineView;
  takeFocus: boolean;
  onAgrees: (line: LineAsTyped) => boolean;
  onNotInstalled: () => boolean;
  onLater: (() => void) | null;
}) {
  const t = useWords();
  const { line, takeFocus, onAgrees, onNotInstalled, onLater } = props;
  const agree = useRef<HTMLButtonElement>(null);
  const form = useForm<LineAsTyped>({
    defaultValues: lineAsTyped(line),
    resolver: zodResolver(wholeLine as never, undefined, { raw: true }) as unknown as Resolver<LineAsTyped>,
  });
  useEffect(() => {
    if (takeFocus) agree.current?.focus();
  }, [takeFocus]);
  const headingId = `item-${line.id}`;
  return (
    <Section title={<span id={headingId}>{line.name}</span>}>
      <FormProvider {...form}>
        <form
          noValidate
          aria-labelledby={headingId}
          className={styles.list}
          onSubmit={(event) => void form.handleSubmit((typed) => onAgrees(typed))(event)}
        >
          {line.ofSet && <WhyHere cites={line.ofSet} />}
          <WhatDocumentsSay />
          <details className={styles.fold}>
            <summary>{t('Name, function and system code')}</summary>
            <div className={styles.list}>
              <WhatItIs />
            </div>
          </details>
          <ButtonRow>
            <button
              ref={agree}
              type="submit"
              className={`${button.button} ${button.main}`}
              aria-describedby={headingId}
            >
              {t('It agrees: next')}
            </button>
            <Button onClick={() => onNotInstalled()}>{t('Not installed on this aircraft')}</Button>
            {onLater && (
              <Button weight="quiet" onClick={onLater}>
                {t('Later')}
              </Button>
            )}
          </ButtonRow>
          <p className={styles.soft}>
            {line.function === 'other'
              ? t('Not installed: it is taken off the list.')
              : t(
                  'Not installed: it stays on the list with 0 installed, and you sign that neither the type certification for day VFR nor the list requires it. If one of them does, enter 0 installed above instead.',
                )}
          </p>
        </form>
      </FormProvider>
    </Section>
  );
}

/** The paragraphs a starting set takes the item from. */
function WhyHere({ cites }: { cites: readonly string[] }) {
  const t = useWords();
  if (cites.length === 0) {
    return <p className={styles.soft}>{t('On the starting set by common practice, no source.')}</p>;
  }
  return (
    <div className={styles.cites} lang="en">
      {cites.map((cite) => (
        <Cite key={cite} cite={cite} />
      ))}
    </div>
  );
}
