import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { run } from '#server/clone.mjs'
import { screens } from '#server/http/health.ts'
import { ensureReady } from '#server/ready.mjs'
import { root } from '#server/root.ts'
import type { Verdict } from '#tests/bench/verdict.ts'

const MOST_RATIO = 1.35
const HOT: readonly string[] = ['counter', 'assembly', 'hand-over', 'pans', 'pick-up']

/** Scripts that a prerendered page loads by itself; old browsers' own ones are not counted. */
const scriptsOf = (html: string): readonly string[] => [
  ...new Set(
    [...html.matchAll(/<script\b[^>]*>/g)]
      .map(([tag]) => tag)
      .filter((tag) => !/\bnomodule\b/i.test(tag))
      .flatMap((tag) => /\bsrc="\/_next\/([^"?]+)/.exec(tag)?.[1] ?? []),
  ),
]

/** Bytes of a page's first-load JavaScript, each script gzipped. @throws where it loads none */
const firstLoad = (built: string, page: string): number => {
  const scripts = scriptsOf(readFileSync(join(built, 'server', 'app', `${page}.html`), 'utf8'))
  if (scripts.length === 0) throw new Error(`${page} loads no script`)
  return scripts.reduce(
    (sum, script) => sum + gzipSync(readFileSync(join(built, script)), { level: 9 }).length,
    0,
  )
}

/** Builds a page with nothing on it, by the same Next and React, below the clone's build folder. */
const buildEmptyPage = async (): Promise<number> => {
  const folder = join(root, '.build', 'empty-page')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(join(folder, 'app'), { recursive: true })
  const files = {
    'package.json': '{ "private": true, "type": "module" }',
    'next.config.mjs': `export default { turbopack: { root: ${JSON.stringify(root)} } }`,
    'app/layout.jsx':
      'export default function Layout({ children }) { return <html lang="en"><body>{children}</body></html> }',
    'app/page.jsx': 'export default function Page() { return <p>empty</p> }',
  }
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text)
  const next = join(root, 'node_modules', 'next', 'dist', 'bin', 'next')
  const { code } = await run([next, 'build', folder], { NODE_ENV: 'production' })
  if (code !== 0) throw new Error('the empty page could not be built')
  const bytes = firstLoad(join(folder, '.next'), 'index')
  rmSync(folder, { recursive: true, force: true })
  return bytes
}

const kB = (bytes: number): string => `${(bytes / 1_000).toFixed(1)} kB`

/** The JavaScript that each screen loads first, against that of an empty page of the same Next. */
export const benchFirstLoad = async (): Promise<Verdict> => {
  await ensureReady({ screens: true })
  const empty = await buildEmptyPage()
  const rows = Object.entries(screens).map(([name, path]) => {
    const page = path === '/' ? 'index' : path.slice(1)
    const bytes = firstLoad(join(root, '.next'), page)
    const ratio = bytes / empty
    return { name, bytes, ratio, isOver: HOT.includes(name) && ratio > MOST_RATIO }
  })
  const hottest = Math.max(...rows.filter(({ name }) => HOT.includes(name)).map((row) => row.ratio))
  return {
    title: `the heaviest hot screen loads ${hottest.toFixed(2)} times the JavaScript of an empty page (at most ${MOST_RATIO})`,
    figures: [
      `an empty page: ${kB(empty)} (gzip, all scripts of the first load)`,
      ...rows.map(
        ({ name, bytes, ratio, isOver }) =>
          `${name}: ${kB(bytes)}, ${ratio.toFixed(2)} times${HOT.includes(name) ? '' : ' (not a hot screen)'}${isOver ? ', too much' : ''}`,
      ),
    ],
    isWithin: rows.every(({ isOver }) => !isOver),
  }
}
