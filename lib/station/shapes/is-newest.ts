import type { StationDocument } from '#lib/station/station-document.ts'

/** Whether a document is of the newest version; screens fold no other, since the server brings it up. */
export const isNewest = (document: unknown): document is StationDocument =>
  typeof document === 'object' &&
  document !== null &&
  'version' in document &&
  document.version === 4
