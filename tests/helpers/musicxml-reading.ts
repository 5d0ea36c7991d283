import { XMLParser, XMLValidator } from 'fast-xml-parser';
import type { ParsedElement } from './musicxml-schema';

const parser = new XMLParser({
  preserveOrder: true,
  ignoreAttributes: false,
  attributeNamePrefix: '',
  parseTagValue: false,
  parseAttributeValue: false,
  trimValues: false,
  ignoreDeclaration: true,
});

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

const toElement = (node: unknown): ParsedElement | null => {
  if (!isRecord(node)) return null;
  const [name] = Object.keys(node).filter((key) => key !== ':@');
  const content = name === undefined ? undefined : node[name];
  if (name === undefined || name.startsWith('#') || !Array.isArray(content)) return null;
  const attributes = isRecord(node[':@']) ? node[':@'] : {};
  return {
    name,
    attributes: Object.fromEntries(Object.entries(attributes).map(([key, value]) => [key, String(value)])),
    children: content.map(toElement).filter((child) => child !== null),
    text: content
      .map((child) => (isRecord(child) && '#text' in child ? String(child['#text']) : ''))
      .join(''),
  };
};

/** The root element of a document as an independent parser reads it. Throws where it is not well-formed. */
export const readXml = (text: string): ParsedElement => {
  const validity = XMLValidator.validate(text);
  if (validity !== true) throw new Error(`Line ${validity.err.line}: ${validity.err.msg}`);
  const nodes: unknown = parser.parse(text);
  const roots = (Array.isArray(nodes) ? nodes : []).map(toElement).filter((root) => root !== null);
  const [root] = roots;
  if (root === undefined || roots.length !== 1) throw new Error(`${roots.length} root elements`);
  return root;
};

/** Every element of a name below another, in document order. */
export const findAll = (element: ParsedElement, name: string): readonly ParsedElement[] =>
  element.children.flatMap((child) => [...(child.name === name ? [child] : []), ...findAll(child, name)]);

/** The text of the first element of a name, or null. */
export const textOf = (element: ParsedElement, name: string): string | null =>
  findAll(element, name)[0]?.text ?? null;
