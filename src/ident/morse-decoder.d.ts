// The package's own types are not a module, so what we use of it is declared here.
declare module 'morse-decoder' {
  interface MorseDecoder {
    encode(text: string): string;
    decode(morse: string): string;
  }
  const morseDecoder: MorseDecoder;
  export default morseDecoder;
}
