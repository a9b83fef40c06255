/**
 * Loaded into the web server before anything else: when the script that started it is gone, however it went, the
 * channel between them closes and the server leaves too.
 */
process.once('disconnect', () => process.exit(0));
