/** Makes elements by DOM calls: no text of a pattern is ever read as markup. */

const SVG = 'http://www.w3.org/2000/svg';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

export function html<T extends keyof HTMLElementTagNameMap>(
  tag: T,
  attributes: Attributes = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[T] {
  return filled(document.createElement(tag), attributes, inside);
}

export function svg<T extends keyof SVGElementTagNameMap>(
  tag: T,
  attributes: Attributes = {},
  ...inside: readonly (Node | string)[]
): SVGElementTagNameMap[T] {
  return filled(document.createElementNS(SVG, tag), attributes, inside);
}

function filled<E extends Element>(
  element: E,
  attributes: Attributes,
  inside: readonly (Node | string)[],
): E {
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(name, String(value));
  }
  element.append(...inside);
  return element;
}

/** Sets custom properties, which a content security policy allows where it forbids style attributes. */
export function styled<E extends ElementCSSInlineStyle>(
  element: E,
  properties: Readonly<Record<string, string | number>>,
): E {
  for (const [name, value] of Object.entries(properties)) element.style.setProperty(name, String(value));
  return element;
}
