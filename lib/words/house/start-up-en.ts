/** Sentences for the person who starts the server, when a store cannot be used. English. */

const why: Readonly<Record<string, (at: string) => string>> = {
  'is-a-file': (at) => `${at} is a file, not a folder.`,
  'below-a-file': (at) => `${at} is a file, so nothing can be stored below it.`,
  'is-a-folder': (at) => `${at} is a folder, where a file should be.`,
  'no-permission': (at) => `You have no permission to write at ${at}.`,
  'read-only': (at) => `${at} can only be read, not written.`,
  full: (at) => `The disk that holds ${at} is full.`,
}

/** One sentence or two for each problem of a store: what is wrong, and what to do. */
export const storeProblemEn = {
  'in-use': (of: { readonly path: string }): string =>
    `The data folder is in use: another program has ${of.path} open. Stop it first (npm stop), or choose another folder with LEVEL_SCOOP_DATA.`,
  damaged: (of: { readonly path: string; readonly detail: string }): string =>
    `${of.path} is damaged, or is not a file of Level Scoop (${of.detail}). Make a copy of the folder, then put back a backup or choose another folder with LEVEL_SCOOP_DATA.`,
  unwritable: (of: {
    readonly path: string
    readonly at: string
    readonly reason: string
    readonly detail: string
  }): string =>
    `Level Scoop cannot write to ${of.path}. ${why[of.reason]?.(of.at) ?? `The computer says: ${of.detail}.`} Choose another folder with LEVEL_SCOOP_DATA, or make room in this one.`,
  'newer-file': (of: {
    readonly path: string
    readonly found: number
    readonly known: number
  }): string =>
    `${of.path} was written by a newer Level Scoop (file version ${of.found}; this one knows up to ${of.known}). Start the newer one, or choose another folder with LEVEL_SCOOP_DATA.`,
  'old-sqlite': (of: { readonly found: string; readonly needed: string }): string =>
    `The database engine is SQLite ${of.found}, which can lose orders. Level Scoop needs ${of.needed} or newer: run npm ci again.`,
  'not-durable': (of: {
    readonly path: string
    readonly setting: string
    readonly found: string
  }): string =>
    `${of.path} could lose orders in a power cut (${of.setting} is ${of.found}). Choose a folder on this computer's own disk with LEVEL_SCOOP_DATA.`,
} as const
