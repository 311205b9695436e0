// Tone greets in the console unless it is told not to before it is loaded.
Object.assign(globalThis, { TONE_SILENCE_LOGGING: true });

export {};
