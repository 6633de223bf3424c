/**
 * The one door to onnxruntime-web: a trained network from its bytes, run on one thread in WebAssembly, so that
 * the same picture gives the same numbers on every machine.
 */
export interface Network {
  /**
   * Three planes of red, green and blue, 0 to 1, `3 * width * height` numbers, to the network's output planes,
   * all of the picture's size, one after the other. Sides in multiples of 32 px.
   */
  run(planes: Float32Array, width: number, height: number): Promise<Float32Array>;
  /** Frees the memory the network holds outside the garbage collector's sight. */
  release(): Promise<void>;
}

/** The little of the library that is used here; its own typings do not compile without a DOM. */
interface OnnxRuntime {
  readonly env: { readonly wasm: { numThreads?: number } };
  readonly InferenceSession: {
    create(weights: Uint8Array, options: { executionProviders: readonly string[] }): Promise<Session>;
  };
  readonly Tensor: new (type: 'float32', data: Float32Array, dims: readonly number[]) => Tensor;
}

interface Session {
  readonly inputNames: readonly string[];
  readonly outputNames: readonly string[];
  run(inputs: Record<string, Tensor>): Promise<Record<string, Tensor>>;
  release(): Promise<void>;
}

interface Tensor {
  readonly data: Float32Array;
}

let loaded: Promise<OnnxRuntime> | null = null;

/**
 * Opens a network with one input and one output. The library itself is loaded on the first call.
 *
 * Rejects with an `Error` when the bytes are no ONNX model that the library can run.
 */
export async function openNetwork(weights: Uint8Array): Promise<Network> {
  loaded ??= load();
  const runtime = await loaded;
  const session = await runtime.InferenceSession.create(weights, { executionProviders: ['wasm'] });
  const [input, output] = [session.inputNames[0], session.outputNames[0]];
  if (input === undefined || output === undefined) {
    throw new Error('The network cannot be used: it needs one input and one output');
  }
  return {
    async run(planes, width, height) {
      const outputs = await session.run({
        [input]: new runtime.Tensor('float32', planes, [1, 3, height, width]),
      });
      return (outputs[output] as Tensor).data;
    },
    release: () => session.release(),
  };
}

async function load(): Promise<OnnxRuntime> {
  const library: string = 'onnxruntime-web';
  const runtime = (await import(library)) as OnnxRuntime;
  runtime.env.wasm.numThreads = 1;
  return runtime;
}
