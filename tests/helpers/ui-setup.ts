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
