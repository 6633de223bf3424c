// Runs in a worker thread: HEIC is unpacked by WebAssembly, which would hold up the server.
export { receivePhoto as default } from './receive-photo.ts';
