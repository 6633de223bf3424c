/** The beginning of an upload as it goes over the wire, of 100,000 bytes that never come. */
export function begunUpload(plantId: string, port: string): string {
  return [
    `POST /api/plants/${plantId}/photos HTTP/1.1`,
    `Host: localhost:${port}`,
    'Content-Type: multipart/form-data; boundary=x',
    'Content-Length: 100000',
    '',
    '--x',
    'Content-Disposition: form-data; name="photos"; filename="a.jpg"',
    '',
    'first bytes of a photo',
  ].join('\r\n');
}
