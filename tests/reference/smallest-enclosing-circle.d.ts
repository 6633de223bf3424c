declare module 'smallest-enclosing-circle' {
  export default function smallestEnclosingCircle(points: readonly { x: number; y: number }[]): {
    x: number;
    y: number;
    r: number;
  };
}
