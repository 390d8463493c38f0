import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** A folder of this test alone, gone when it ends. */
export const temporaryFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'level-scoop-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
