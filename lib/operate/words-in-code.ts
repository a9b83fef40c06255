import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { codeIn, ROOT } from './imports-in-code';

/** Reads the code for its words: what is said through t, said and Say, and what is shown without. */
export interface WordsInCode {
  /** Message -> the files it is used in, in order. */
  readonly messages: ReadonlyMap<string, readonly string[]>;
  /** Words that stand bare in JSX, as "file:line: words". */
  readonly bare: readonly string[];
  /** Calls whose text cannot be read from the code: neither a literal nor a constant. */
  readonly unreadable: readonly string[];
}

const FOLDERS = ['app', 'lib'];
const SKIPPED = /^lib\/(db\/generated|operate|words)\//;

export function wordsInCode(): WordsInCode {
  const messages = new Map<string, string[]>();
  const bare: string[] = [];
  const unreadable: string[] = [];
  for (const file of FOLDERS.flatMap(codeIn).filter((name) => !SKIPPED.test(name))) {
    const source = ts.createSourceFile(
      file,
      readFileSync(path.join(ROOT, file), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
      file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
    );
    const at = (node: ts.Node) =>
      `${file}:${source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1}`;
    const add = (text: string) => {
      const files = messages.get(text) ?? [];
      if (!files.includes(file)) files.push(file);
      messages.set(text, files);
    };
    const read = (node: ts.Expression) => {
      const { literals, built } = textsOf(node);
      literals.forEach(add);
      built.forEach((one) => unreadable.push(`${at(one)}: ${one.getText(source)}`));
    };
    const walk = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && isSayer(node.expression) && node.arguments[0]) read(node.arguments[0]);
      if (ts.isJsxAttribute(node) && isTextOfSay(node, source)) {
        const given = node.initializer;
        if (given && ts.isStringLiteral(given)) add(decoded(given.text));
        else if (given && ts.isJsxExpression(given) && given.expression) read(given.expression);
      }
      if (file.startsWith('app/'))
        bare.push(...bareWords(node, source).map((words) => `${at(node)}: ${words}`));
      ts.forEachChild(node, walk);
    };
    walk(source);
  }
  return { messages, bare, unreadable };
}

const isSayer = (callee: ts.Expression): boolean =>
  ts.isIdentifier(callee) && ['t', 'said', 'inEnglish'].includes(callee.text);

const isTextOfSay = (node: ts.JsxAttribute, source: ts.SourceFile): boolean =>
  node.name.getText(source) === 'text' &&
  (ts.isJsxSelfClosingElement(node.parent.parent) || ts.isJsxOpeningElement(node.parent.parent)) &&
  node.parent.parent.tagName.getText(source) === 'Say';

/** The literals an expression may come to. A name stands for a constant, which has its own mark. */
function textsOf(node: ts.Expression): { literals: string[]; built: ts.Expression[] } {
  if (ts.isStringLiteralLike(node)) return { literals: [node.text], built: [] };
  if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node)) return textsOf(node.expression);
  if (ts.isConditionalExpression(node)) return both(node.whenTrue, node.whenFalse);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind !== ts.SyntaxKind.PlusToken) {
    return both(node.left, node.right);
  }
  const isBuilt = ts.isTemplateExpression(node) || ts.isBinaryExpression(node);
  return { literals: [], built: isBuilt ? [node] : [] };
}

function both(one: ts.Expression, other: ts.Expression): ReturnType<typeof textsOf> {
  const [a, b] = [textsOf(one), textsOf(other)];
  return { literals: [...a.literals, ...b.literals], built: [...a.built, ...b.built] };
}

/** Properties of elements that are read by people; a `name` only when it begins with a capital. */
const WORDY = new Set(
  'label title hint aria-label aria-description placeholder alt submit pendingWords lead legend heading summary chooseWords caption text'.split(
    ' ',
  ),
);
const LETTERS = /\p{L}{2,}/u;
/** Marks of aviation and units, the same in every language. */
const SAME_EVERYWHERE =
  /^(?:Wheelchock|Hobbs|Tach|VFR|IFR|UTC|CSV|JASC|MEL|CFR|SHA-256|ft|kt|qt|min|mm|in|lb|gal|h|s|x)$/;

function bareWords(node: ts.Node, source: ts.SourceFile): string[] {
  if (ts.isJsxText(node)) return worded(node.text);
  if (ts.isJsxAttribute(node)) {
    const given = node.initializer;
    const name = node.name.getText(source);
    if (name === 'name' && given && ts.isStringLiteral(given) && /^\p{Lu}/u.test(given.text))
      return worded(given.text);
    if (!given || !WORDY.has(name) || isTextOfSay(node, source)) return [];
    if (ts.isStringLiteral(given)) return worded(given.text);
    return ts.isJsxExpression(given) && given.expression ? shown(given.expression) : [];
  }
  const isChild = ts.isJsxExpression(node) && (ts.isJsxElement(node.parent) || ts.isJsxFragment(node.parent));
  return isChild && node.expression ? shown(node.expression) : [];
}

/** Literals an expression shows as they are. */
function shown(node: ts.Expression): string[] {
  if (ts.isParenthesizedExpression(node)) return shown(node.expression);
  if (ts.isStringLiteralLike(node)) return worded(node.text);
  if (ts.isConditionalExpression(node)) return [...shown(node.whenTrue), ...shown(node.whenFalse)];
  if (ts.isBinaryExpression(node)) return shown(node.right);
  if (ts.isTemplateExpression(node)) {
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].flatMap(worded);
  }
  return [];
}

const worded = (text: string): string[] => {
  const words = decoded(text).trim();
  const isSame = words
    .split(/[^\p{L}\d-]+/u)
    .filter((word) => LETTERS.test(word))
    .every((word) => SAME_EVERYWHERE.test(word));
  // An address is nobody's words.
  return isSame || words.startsWith('/') ? [] : [words.replaceAll(/\s+/g, ' ')];
};

const decoded = (text: string): string =>
  text.replaceAll('&nbsp;', '\u00a0').replaceAll('&amp;', '&').replaceAll('&quot;', '"');
