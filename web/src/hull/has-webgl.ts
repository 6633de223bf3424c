/** Whether the browser lends WebGL. Asked before three is fetched: without it three is of no use, and would complain on the console. */
export function hasWebGL(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
