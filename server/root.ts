import { fileURLToPath } from 'node:url'

/** The repository's folder: one level above this file and above its bundle alike. */
export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[/\\]$/, '')
