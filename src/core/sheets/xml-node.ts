import { readDecimal } from '../theory/decimal';

/** An element of an XML document as the shell hands it over: what a reader of sheets needs of it and no more. */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlNode[];
  /** Text directly in it. */
  readonly text: string;
}

/** The children of a name. */
export const childrenOf = (node: XmlNode | undefined, name: string): readonly XmlNode[] =>
  node?.children.filter((child) => child.name === name) ?? [];

/** The first child along a path of names. */
export const childAt = (node: XmlNode | undefined, ...path: readonly string[]): XmlNode | undefined =>
  path.reduce<XmlNode | undefined>((here, name) => childrenOf(here, name)[0], node);

/** The text at a path, without blanks at its ends; empty where there is none. */
export const textAt = (node: XmlNode | undefined, ...path: readonly string[]): string =>
  childAt(node, ...path)?.text.trim() ?? '';

/** The number at a path; null where there is none. */
export const numberAt = (node: XmlNode | undefined, ...path: readonly string[]): number | null =>
  readDecimal(textAt(node, ...path));
