/**
 * Runs in the browser before anything else of ours. zod would try whether it may make code out of strings; the policy of the
 * pages forbids that, and the try alone would be reported as a breach of it. Said without loading zod, which many pages lack.
 */
const here = globalThis as { __zod_globalConfig?: { jitless?: boolean } };
(here.__zod_globalConfig ??= {}).jitless = true;
