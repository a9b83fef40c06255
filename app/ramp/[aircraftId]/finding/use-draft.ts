'use client';

import { useEffect, useState } from 'react';
import { useForm, type UseFormReturn } from 'react-hook-form';
import { newRequestId } from '@/app/_ui/request-id';
import { EMPTY_DRAFT, type FindingDraft } from '@/lib/findings/compose-finding';
import { type ReportFindingInput } from '@/lib/findings/schema';
import { keep, readKept } from '../../_phone/kept';
import { usePhotos } from '../../_phone/photo-outbox';

/** A finding being typed, as this phone keeps it until the server has it. */
export interface KeptDraft {
  readonly requestId: string;
  /** Name of its photos in the outbox; they live in memory only. */
  readonly bundle: string;
  readonly foundAt: string;
  readonly values: FindingDraft;
  /** What was sent without an answer, in case it did arrive. */
  readonly tried: ReportFindingInput | null;
  readonly photos: number;
}

export interface Draft {
  readonly form: UseFormReturn<FindingDraft>;
  readonly kept: KeptDraft;
  readonly change: (part: Partial<KeptDraft>) => void;
  /** The server has it: nothing is kept any longer. */
  readonly forget: () => void;
  /** Photos that were taken for it and went with a reload. */
  readonly lostPhotos: number;
  /** The phone refuses to keep things (no room, private window): leaving the page loses the words. */
  readonly isNotKept: boolean;
}

/** The draft under `key`: what was typed before a reload, or an empty one. Only in the browser. */
export function useDraft(key: string): Draft {
  const [kept, setKept] = useState(() => readKept<KeptDraft>(key) ?? freshDraft());
  const [isForgotten, setForgotten] = useState(false);
  const [isNotKept, setNotKept] = useState(false);
  const form = useForm<FindingDraft>({ defaultValues: { ...EMPTY_DRAFT, ...kept.values } });
  const photos = usePhotos().filter((photo) => photo.bundle === kept.bundle).length;
  const [lostPhotos] = useState(Math.max(0, kept.photos - photos));

  useEffect(() => {
    if (isForgotten) return;
    const save = (values: FindingDraft) => {
      const isEmpty = values.finding === '' && values.words === '' && photos === 0;
      return keep(key, isEmpty && kept.tried === null ? null : { ...kept, values, photos });
    };
    save(form.getValues());
    return form.subscribe({
      formState: { values: true },
      callback: ({ values }) => setNotKept(!save(values)),
    });
  }, [form, key, kept, photos, isForgotten]);

  function change(part: Partial<KeptDraft>): void {
    const changed = { ...kept, values: form.getValues(), photos, ...part };
    // At once and not with the next drawing: the page may be gone by then.
    keep(key, changed);
    setKept(changed);
  }

  function forget(): void {
    setForgotten(true);
    keep(key, null);
  }

  return { form, kept, change, forget, lostPhotos, isNotKept };
}

const freshDraft = (): KeptDraft => ({
  requestId: newRequestId(),
  bundle: newRequestId(),
  foundAt: new Date().toISOString(),
  values: EMPTY_DRAFT,
  tried: null,
  photos: 0,
});
