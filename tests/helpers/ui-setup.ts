/**
 * React keeps the stack of whoever made an element, for its messages; no test reads those, and taking them is a fifth
 * of the time page tests take. It takes none once it has counted ten thousand in a while: here, always.
 */
import { configure } from '@testing-library/dom';
import React from 'react';
import { PATIENCE } from './soon';

const INTERNALS = '__CLIENT_INTERNALS_DO_NOT_USE_OR_WARN_USERS_THEY_CANNOT_UPGRADE';
const internals: unknown = Reflect.get(React, INTERNALS);
if (typeof internals === 'object' && internals !== null)
  Object.defineProperty(internals, 'recentlyCreatedOwnerStacks', { get: () => 10_000, set: () => {} });

configure({ asyncUtilTimeout: PATIENCE });

/**
 * Styles that no style sheet and no style of its own gives an element, by tag: queries by role ask for them thousands
 * of times, and working them out was a fifth of the time. The page's own style sheets are not loaded here.
 */
const ASKED = ['display', 'visibility', 'pointerEvents'] as const;
/** In a style of an element's own, one of these. */
const SETS_ASKED = /\b(display|visibility|pointer-events)\b/;
const workOut = window.getComputedStyle.bind(window);
const byTag = new Map<string, ReadonlyMap<PropertyKey, string>>();

const plainStyles = (element: Element): ReadonlyMap<PropertyKey, string> => {
  const kept = byTag.get(element.tagName);
  if (kept !== undefined) return kept;
  const style = workOut(element);
  const worked = new Map<PropertyKey, string>(ASKED.map((name) => [name, style[name]]));
  if (element.isConnected) byTag.set(element.tagName, worked);
  return worked;
};

window.getComputedStyle = (element, pseudo) => {
  if (pseudo || SETS_ASKED.test(element.getAttribute('style') ?? '')) return workOut(element, pseudo);
  const plain = plainStyles(element);
  const read = (name: string): string => plain.get(name) ?? workOut(element).getPropertyValue(name);
  return new Proxy(Object.create(null), {
    get: (_, name) =>
      name === 'getPropertyValue' ? read : (plain.get(name) ?? Reflect.get(workOut(element), name)),
  });
};
