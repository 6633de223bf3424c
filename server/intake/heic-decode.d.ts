declare module 'heic-decode' {
  interface Picture {
    readonly width: number;
    readonly height: number;
    decode(): Promise<{ width: number; height: number; data: Uint8ClampedArray }>;
  }
  const decode: {
    all(input: { buffer: Uint8Array }): Promise<Picture[] & { dispose(): void }>;
  };
  export default decode;
}
