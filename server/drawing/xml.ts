/** Writes XML: elements, attributes and text, escaped so that no name of an author can break or run anything. */
import { decimal } from './lines';

export type Attributes = Readonly<Record<string, string | number>>;

/** Characters that XML 1.0 (section 2.2) does not allow, lone surrogates among them: shown as the replacement sign. */
const FORBIDDEN =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

export function escaped(text: string): string {
  return text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"'\t\n\r]/g, (sign) => ENTITIES[sign]!);
}

function opening(tag: string, attributes: Attributes): string {
  const written = Object.entries(attributes).map(
    ([name, value]) => ` ${name}="${typeof value === 'number' ? decimal(value) : escaped(value)}"`,
  );
  return `<${tag}${written.join('')}`;
}

/** An element that holds other elements, one a line, indented by two spaces. */
export function group(tag: string, attributes: Attributes, children: readonly string[]): string {
  if (children.length === 0) return `${opening(tag, attributes)}/>`;
  const inside = children.map((child) => child.replace(/^/gm, '  ')).join('\n');
  return `${opening(tag, attributes)}>\n${inside}\n</${tag}>`;
}

/** An element on one line: what it holds stands inside without white space. */
export function leaf(tag: string, attributes: Attributes, inside = ''): string {
  return inside === '' ? `${opening(tag, attributes)}/>` : `${opening(tag, attributes)}>${inside}</${tag}>`;
}

/** A text element; the text is escaped here and nowhere else. */
export function text(tag: string, attributes: Attributes, words: string): string {
  return leaf(tag, attributes, escaped(words));
}
