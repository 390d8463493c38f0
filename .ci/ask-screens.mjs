// Asks a running server for every screen that its /health names. With --ready only whether it answers.
const base = `http://127.0.0.1:${process.env.PORT}`

const readHealth = async () => {
  try {
    return await (await fetch(`${base}/health`)).json()
  } catch {
    return null
  }
}

const problemOf = async (path) => {
  const answer = await fetch(base + path)
  const text = await answer.text()
  if (answer.status !== 200) return `status ${answer.status}`
  if (!answer.headers.get('content-type')?.startsWith('text/html')) return 'not a page'
  if (!answer.headers.get('content-security-policy')?.includes("'sha256-")) return 'no policy'
  if (!/<title>[^<]+<\/title>/.test(text)) return 'no title'
  const scripts = [...text.matchAll(/<script[^>]* src="([^"]+)"/g)].map(([, src]) => src)
  if (scripts.length === 0) return 'no script'
  for (const src of scripts) {
    const { status } = await fetch(new URL(src, base))
    if (status !== 200) return `${src}: status ${status}`
  }
  return null
}

const health = await readHealth()
if (process.argv.includes('--ready')) process.exit(health === null ? 1 : 0)
const screens = Object.entries(health?.screens ?? {})
let failures = screens.length === 0 ? 1 : 0
for (const [name, path] of screens) {
  const problem = await problemOf(path)
  console.log(`${name} ${path}: ${problem ?? 'answers'}`)
  if (problem !== null) failures += 1
}
process.exit(failures === 0 ? 0 : 1)
