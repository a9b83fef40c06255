import { type NextRequest } from 'next/server';
import { guardPage } from './app/_guard/guard-page';

/** Runs before every page. It decides nothing about who may see what: that is asked in each service. */
export const proxy = (request: NextRequest) => guardPage(request);

/**
 * Pages, and no other thing: files and the API get their headers from next.config.ts, and the body of an upload must not pass
 * here, since Next would cut it off at 10 MB. What a page fetches of itself (rsc, next-action) is drawn into the page that is
 * there, under the policy it came with.
 */
export const config = {
  matcher: [
    {
      source:
        '/((?!api/|_next/|serwist/|icon\\.svg|apple-icon\\.png|manifest\\.webmanifest|favicon\\.ico).*)',
      missing: [
        { type: 'header', key: 'rsc' },
        { type: 'header', key: 'next-action' },
      ],
    },
  ],
};
