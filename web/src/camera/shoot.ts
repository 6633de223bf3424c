import { todayHere } from '../words/day-words.ts';

/** Near lossless: the outline is found to a fraction of a px. */
const QUALITY = 0.95;

/** Takes what the video shows now as a JPEG of the camera's own size. Rejects when the picture cannot be taken. */
export async function shoot(video: HTMLVideoElement, now = new Date()): Promise<File> {
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  const blob = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, 'image/jpeg', QUALITY);
  });
  if (!blob || blob.size === 0) throw new Error('The picture could not be taken. Try once more.');
  const time = now.toTimeString().slice(0, 8).replaceAll(':', '');
  return new File([blob], `live-${todayHere(now)}-${time}.jpg`, { type: 'image/jpeg' });
}
