/** An XML element. Attributes without a value are left out. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly children: readonly XmlElement[] | string;
}

/** An element holding text, a number, or other elements; `null` children are left out. */
export const element = (
  name: string,
  content: string | number | readonly (XmlElement | null)[] = [],
  attributes: XmlElement['attributes'] = {},
): XmlElement => ({
  name,
  attributes,
  children: Array.isArray(content)
    ? content.filter((child): child is XmlElement => child !== null)
    : String(content),
});

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Characters XML 1.0 does not allow, however they are written, and lone halves of pairs. */
const isForbidden = (character: string): boolean => {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code !== 0x09 && code !== 0x0a && code !== 0x0d;
  return (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff;
};

const escapeText = (text: string): string =>
  [...text]
    .filter((character) => !isForbidden(character))
    .map((character) => ESCAPES[character] ?? character)
    .join('');

const renderAttributes = (attributes: XmlElement['attributes']): string =>
  Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escapeText(String(value))}"`)
    .join('');

const renderLines = ({ name, attributes, children }: XmlElement, indent: string): readonly string[] => {
  const open = `${indent}<${name}${renderAttributes(attributes)}`;
  if (typeof children === 'string') return [`${open}>${escapeText(children)}</${name}>`];
  if (children.length === 0) return [`${open}/>`];
  return [
    `${open}>`,
    ...children.flatMap((child) => renderLines(child, `${indent}  `)),
    `${indent}</${name}>`,
  ];
};

/** A document: declaration, document type, and the element, indented. Characters XML cannot hold are dropped. */
export const renderXml = (root: XmlElement, documentType: string): string =>
  ['<?xml version="1.0" encoding="UTF-8" standalone="no"?>', documentType, ...renderLines(root, ''), ''].join(
    '\n',
  );
