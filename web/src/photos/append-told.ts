/** Puts a file into a form behind its length and fingerprint, by which the server knows whether it arrived whole. */
export async function appendTold(body: FormData, field: string, file: File): Promise<void> {
  body.append('byteCount', String(file.size));
  body.append('sha256', await sha256Of(await file.arrayBuffer()));
  body.append(field, file);
}

/** SHA-256, hexadecimal. Browsers reckon it on secure pages only; a phone on the home network’s http has it from a library. */
async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const hash = crypto.subtle
    ? new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
    : (await import('@noble/hashes/sha2.js')).sha256(new Uint8Array(bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
