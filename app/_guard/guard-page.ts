import { NextResponse, type NextRequest } from 'next/server';
import { shellDraws } from '../ramp/_worker/shell-paths';
import { hashesOnly, nonceOnly, whileDeveloping, type PolicyOptions } from './content-policy';
import { keptPage } from './kept-page';

const POLICY = 'Content-Security-Policy';

/** A year (RFC 6797, 6.1.1). Without includeSubDomains: what else a school has under its name is not ours to decide. */
const A_YEAR = 'max-age=31536000';

/** Asked for anew each time; the phone's worker keeps it, and nothing in between. */
const KEPT = { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'private, no-cache' };

/**
 * The headers of a page that can only be said while it is asked for: its policy, and over https that it is to be asked for
 * that way from now on. The rest stands in next.config.ts. Next reads the nonce out of the request's copy of the policy and
 * puts it on every script it writes.
 */
export async function guardPage(request: NextRequest): Promise<NextResponse> {
  const options: PolicyOptions = {
    developing: process.env.NODE_ENV === 'development',
    overHttps: isOverHttps(),
  };
  if (shellDraws(request.nextUrl.pathname) === 'always') {
    if (options.developing) return told(NextResponse.next(), whileDeveloping(), options);
    const { html, sums } = await keptPage();
    return told(new NextResponse(html, { headers: KEPT }), hashesOnly(sums, options), options);
  }
  const policy = nonceOnly(newNonce(), options);
  const headers = new Headers(request.headers);
  headers.set(POLICY, policy);
  return told(NextResponse.next({ request: { headers } }), policy, options);
}

function told(response: NextResponse, policy: string, { overHttps }: PolicyOptions): NextResponse {
  response.headers.set(POLICY, policy);
  // Over plain http it must not be sent (RFC 6797, 7.2); that is the demo on one's own machine.
  if (overHttps) response.headers.set('Strict-Transport-Security', A_YEAR);
  return response;
}

/** As browsers reach the server; a proxy before it may well speak http to us. */
const isOverHttps = (): boolean => process.env.NEXTAUTH_URL?.startsWith('https://') ?? false;

/** 128 bits nobody can know before (CSP3, 7.1). */
const newNonce = (): string => Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64');
