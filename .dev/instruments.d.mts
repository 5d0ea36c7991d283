import type { Plugin } from 'vite';

export declare const trimInstruments: (bytes: Uint8Array) => Uint8Array<ArrayBuffer>;
export declare const instrumentsAddress: () => string;
export declare const readInstruments: () => Uint8Array;
export declare const instrumentsPlugin: () => Plugin;
