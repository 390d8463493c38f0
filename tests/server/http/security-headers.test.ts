import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  contentSecurityPolicy,
  inlineScriptHashes,
  readPageHashes,
} from '#server/http/security-headers.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'

// From openssl: printf 'alert("Hello, world.");' | openssl dgst -sha256 -binary | base64
const hello = '<script>alert("Hello, world.");</script>'
const helloHash = "'sha256-95/2P1j1ZySEaTPvS2vdbldPcGJYZRvEeWm0x0qZqcQ='"

describe('the policy of a page', () => {
  test('names the hash of each inline script once, and of no other', () => {
    expect(inlineScriptHashes(`<p>${hello}<script src="/a.js"></script>${hello}`)).toEqual([
      helloHash,
    ])
    expect(inlineScriptHashes('<script src="/a.js" async></script>')).toEqual([])
    expect(inlineScriptHashes(hello.replace('<script>', '<script id="x">'))).toEqual([helloHash])
  })

  test('is by page, with the scripts of the page of a failure in each', () => {
    const folder = temporaryFolder()
    const app = join(folder, 'server', 'app')
    mkdirSync(join(app, 'print'), { recursive: true })
    writeFileSync(join(app, 'index.html'), hello)
    writeFileSync(join(app, 'print', 'labels.html'), '<p>no script</p>')
    writeFileSync(join(app, '_global-error.html'), '<script>failed()</script>')
    const [failed = ''] = inlineScriptHashes('<script>failed()</script>')
    const pages = readPageHashes(folder)
    expect([...pages.keys()].sort()).toEqual(['/', '/_global-error', '/print/labels'])
    expect(pages.get('/')).toEqual([helloHash, failed])
    expect(pages.get('/print/labels')).toEqual([failed])
  })

  test('allows nothing inline by word, and leaves plain http alone', () => {
    const policy = contentSecurityPolicy([helloHash], 'station.test:4321', {
      secure: false,
      development: false,
    })
    expect(policy).toContain(`script-src 'self' ${helloHash};`)
    expect(policy).toContain('ws://station.test:4321')
    expect(policy).not.toMatch(/unsafe|upgrade-insecure-requests/)
  })
})
