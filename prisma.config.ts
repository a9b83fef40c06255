import { defineConfig } from 'prisma/config';

/**
 * Prisma only generates the client here. Migrations are plain SQL run by lib/operate/migrate.ts, because roles,
 * row policies and triggers are as much a part of the schema as the tables.
 */
export default defineConfig({ schema: 'prisma/schema.prisma' });
