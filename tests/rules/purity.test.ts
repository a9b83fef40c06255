import { readFileSync, readdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

// Source: DEVELOPERS.md, "lib/rules is a pure core" (the project's own rule; no outside source).

const RULES = path.resolve(import.meta.dirname, '..', '..', 'lib', 'rules');
const LIBRARIES = ['astronomy-engine', 'temporal-polyfill'];

const files = readdirSync(RULES, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') || name.endsWith('.tsx'))
  .map((name) => name.replaceAll(path.sep, '/'))
  .sort();

/** What a source file does that a pure rule may not: imports that leave the core, clocks, chance, the outside world. */
function impurities(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const imports = (from: string) => {
    if (!mayImport(file, from)) {
      found.push(`imports ${from}`);
    }
  };
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier) {
      imports((node.moduleSpecifier as ts.StringLiteral).text);
    } else if (ts.isImportTypeNode(node) || ts.isExternalModuleReference(node)) {
      imports(node.getText().replace(/^[^'"]*['"]|['"].*$/gs, ''));
    } else if (ts.isCallExpression(node)) {
      const callee = node.expression.getText();
      if (callee === 'import' || callee === 'require') {
        imports((node.arguments[0]?.getText() ?? '').replace(/^['"`]|['"`]$/g, ''));
      } else if (/^(globalThis\.)?(fetch|setTimeout|setInterval|Date)$/.test(callee)) {
        found.push(`calls ${callee}()`);
      }
    } else if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length) {
      found.push('reads the clock with new Date()');
    } else if (ts.isPropertyAccessExpression(node)) {
      const spelled = node.getText();
      if (/^(globalThis\.)?(Date\.now|Math\.random|performance\.now|Temporal\.Now)\b/.test(spelled)) {
        found.push(`uses ${spelled}`);
        return;
      } else if (/^(globalThis\.)?(process|window|document|localStorage|crypto)\./.test(spelled)) {
        found.push(`reaches for ${spelled}`);
        return;
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function mayImport(file: string, from: string): boolean {
  if (from.startsWith('.')) {
    const target = path.resolve(RULES, path.dirname(file), from);
    return target.startsWith(RULES + path.sep);
  }
  return LIBRARIES.includes(from);
}

describe('lib/rules is pure', () => {
  test('the check looks at the whole core', () => {
    expect(files.length).toBeGreaterThan(5);
    expect(files).toContain('verdict.ts');
    expect(files).toContain('law/registry.ts');
  });

  test.each(files)('%s', (file) => {
    expect(impurities(file, readFileSync(path.join(RULES, file), 'utf8'))).toEqual([]);
  });
});

describe('the check itself finds', () => {
  test.each([
    ['a node builtin', `import { readFile } from 'node:fs';`],
    ['a node builtin without its prefix', `import path from 'path';`],
    ['Prisma', `import type { Aircraft } from '@prisma/client';`],
    ['next', `import { headers } from 'next/headers';`],
    ['react', `import 'react';`],
    ['an import that leaves the core', `import { db } from '../../db/client';`],
    ['an export that leaves the core', `export * from '../../problems';`],
    ['the alias', `import { db } from '@/lib/db/client';`],
    ['a late import', `const fs = await import('fs');`],
    ['an import in a type', `type A = import('../../db/client').Row;`],
    ['the clock', `const a = Date.now();`],
    ['the clock again', `const a = new Date();`],
    ['the clock once more', `const a = Date();`],
    ['the clock of the calendar library', `const a = Temporal.Now.instant();`],
    ['chance', `const a = Math.random();`],
    ['the environment', `const a = process.env.TZ;`],
    ['the network', `await fetch('/x');`],
  ])('%s', (_what, text) => {
    expect(impurities('part-91/x.ts', text)).toHaveLength(1);
  });

  test('nothing in innocent text', () => {
    const text = `
      // Date.now() and fetch() in a comment do no harm.
      import { known } from '../facts';
      import { Temporal } from 'temporal-polyfill';
      const at = new Date(1000);
      const words = 'process.env, Math.random()';`;
    expect(impurities('part-91/x.ts', text)).toEqual([]);
  });

  test('every builtin of Node', () => {
    expect(builtinModules.filter((name) => mayImport('x.ts', name))).toEqual([]);
  });
});
