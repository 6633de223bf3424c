/** Why a page cannot have the live camera, or that it can. */
export type CameraAccess = 'open' | 'not-secure' | 'no-camera-here';

/** Browsers lend the camera only to pages that come from the machine itself or over https. */
export function cameraAccess(): CameraAccess {
  if (!window.isSecureContext) return 'not-secure';
  return typeof navigator.mediaDevices?.getUserMedia === 'function' ? 'open' : 'no-camera-here';
}

export const NO_ACCESS_WORDS: Record<Exclude<CameraAccess, 'open'>, string> = {
  'not-secure':
    'The live picture with last week’s outline over it needs this page to come over https, or from the machine itself: browsers lend the camera to no other. Take an ordinary photo: the check comes right after it.',
  'no-camera-here':
    'This browser has no live camera for pages. Take an ordinary photo: the check comes right after it.',
};

/** What the browser’s refusal means, in words that say what to do. */
export function refusalWords(fault: unknown): string {
  const name = fault instanceof DOMException ? fault.name : '';
  switch (name) {
    case 'NotAllowedError':
      return 'The camera was not lent to this page. Allow it in the browser’s settings for this page and open the live picture again, or take an ordinary photo.';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'This device has no camera. Choose a photo that another one took.';
    case 'NotReadableError':
      return 'Another program holds the camera. Close it and open the live picture again, or take an ordinary photo.';
    default:
      return 'The camera did not start. Open the live picture again, or take an ordinary photo.';
  }
}
