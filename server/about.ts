import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { z } from 'zod'
import type { About } from '#server/http/health.ts'

const readRevision = async (folder: string): Promise<string | null> => {
  try {
    const { stdout } = await promisify(execFile)('git', ['rev-parse', '--verify', 'HEAD'], {
      cwd: folder,
      timeout: 2_000,
    })
    return stdout.trim() || null
  } catch {
    return null
  }
}

/** Version and commit of what lies in `folder`. */
export const readAbout = async (folder: string): Promise<About> => {
  const text = readFileSync(join(folder, 'package.json'), 'utf8')
  const { version } = z.object({ version: z.string() }).parse(JSON.parse(text))
  return { version, revision: await readRevision(folder) }
}
