// Runs in a worker thread: HEIC is unpacked by WebAssembly, which would hold up the server.
import { watchedJobs } from '../measuring/watched-job.ts';
import { receivePhoto } from './receive-photo.ts';

export default watchedJobs({ default: receivePhoto });
