/** Browser and machine in our own words. The headers are what current browsers send (from memory, versions invented). */
import { expect, test } from 'vitest';
import { deviceInWords } from '@/lib/access/device';

test.each([
  ['Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0', 'Firefox on Windows'],
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0',
    'Edge on Windows',
  ],
  [
    'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36',
    'Chrome on Android',
  ],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1',
    'Safari on iPhone',
  ],
  [
    'Mozilla/5.0 (iPad; CPU OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) CriOS/140.0 Mobile/15E148 Safari/604.1',
    'Chrome on iPad',
  ],
  [
    'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Safari/605.1.15',
    'Safari on Mac',
  ],
  [
    'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) HeadlessChrome/140.0.0.0 Safari/537.36',
    'Chrome on Linux',
  ],
  ['curl/8.5.0', 'A browser'],
  ['Something (Windows NT 10.0)', 'A browser on Windows'],
  ['', 'A browser'],
  [null, 'A browser'],
])('%s', (header, words) => {
  expect(deviceInWords(header)).toBe(words);
});

test('nothing of the header itself is kept', () => {
  expect(deviceInWords('Firefox/140.0 <script> (Windows; my name is Ruth)')).toBe('Firefox on Windows');
});
