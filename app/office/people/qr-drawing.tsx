'use client';

import { useWords } from '#words';
import { useEffect, useState } from 'react';
import styles from './people.module.css';

/** An address as a QR code (ISO/IEC 18004), drawn as one path. What makes it is loaded only when one is shown. */
export function QrDrawing({ text, label }: { text: string; label?: string }) {
  const t = useWords();
  const [drawn, setDrawn] = useState<{ size: number; path: string } | null>(null);
  useEffect(() => {
    let shown = true;
    void import('qrcode').then(({ create }) => {
      const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules;
      let path = '';
      for (let at = 0; at < size * size; at += 1) {
        if (data[at]) path += `M${at % size} ${Math.floor(at / size)}h1v1h-1z`;
      }
      if (shown) setDrawn({ size, path });
    });
    return () => {
      shown = false;
    };
  }, [text]);
  const size = drawn?.size ?? 41;
  return (
    <svg
      viewBox={`0 0 ${size} ${size}`}
      width={240}
      height={240}
      className={styles.qr}
      role="img"
      aria-label={label ?? t('The same address as a code to scan')}
    >
      {drawn && <path d={drawn.path} fill="currentColor" shapeRendering="crispEdges" />}
    </svg>
  );
}
