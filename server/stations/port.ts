/** A station document as it was put, and which putting it was. */
export interface KeptStation<Document> {
  readonly station: string
  /** Counts up from 1 within its station. */
  readonly revision: number
  readonly document: Document
}

/** Station documents: rows with a revision, none ever changed. */
export interface Stations<Document> {
  /** Keeps a document as the station's newest, durable when the promise settles. */
  put(station: string, document: Document): Promise<number>
  /** The newest document of a station. @throws what the given parse throws. */
  latest(station: string): Promise<KeptStation<Document> | null>
  /** The newest document of each station, first kept station first. */
  list(): Promise<readonly KeptStation<Document>[]>
}

/** Turns stored JSON into a document; throws where it is none. */
export type ParseDocument<Document> = (json: unknown) => Document
