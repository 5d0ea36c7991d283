// The library greets in the console when it loads unless asked not to: import this before it.
Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });
