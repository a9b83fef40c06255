/**
 * Kind of browser and machine in a few own words ("Firefox on Windows"), for the list of one's sessions. The header itself
 * is not kept: it says more of a person than anybody needs here. Order matters: most browsers name others as well
 * (common practice, no source).
 */
export function deviceInWords(userAgent: string | null | undefined): string {
  const text = userAgent ?? '';
  const browser = BROWSERS.find(([mark]) => mark.test(text))?.[1];
  const machine = MACHINES.find(([mark]) => mark.test(text))?.[1];
  if (browser && machine) return `${browser} on ${machine}`;
  return browser ?? (machine ? `A browser on ${machine}` : 'A browser');
}

const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/\bEdg(?:e|A|iOS)?\//, 'Edge'],
  [/\b(?:OPR|Opera)\//, 'Opera'],
  [/\bSamsungBrowser\//, 'Samsung browser'],
  [/\b(?:Firefox|FxiOS)\//, 'Firefox'],
  [/\b(?:Chrome|Chromium|CriOS|HeadlessChrome)\//, 'Chrome'],
  [/\bVersion\/[\d.]+.*\bSafari\//, 'Safari'],
];

const MACHINES: readonly (readonly [RegExp, string])[] = [
  [/\biPhone\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bCrOS\b/, 'ChromeOS'],
  [/\bMac OS X\b|\bMacintosh\b/, 'Mac'],
  [/\bLinux\b/, 'Linux'],
];
