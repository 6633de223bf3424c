declare module 'cookie' {
  /** Reads a Cookie header; a name that is not there is `undefined`. */
  export function parse(header: string): Record<string, string | undefined>;
}

declare module 'cookie-signature' {
  /** `value.signature`, HMAC-SHA256. */
  export function sign(value: string, secret: string): string;
  /** The value whose signature holds, else `false`; compared in constant time. */
  export function unsign(signed: string, secret: string): string | false;
}
