/** `npm stop`: ends the server that runs on this machine, and says what happened. */
import { readFileSync } from 'node:fs'
import { request as askPlainly } from 'node:http'
import { request as askSecurely } from 'node:https'
import { join, resolve } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { readyWords as words } from '#lib/words/house/ready-en.mjs'
import { root } from '#server/clone.mjs'

const WAIT_S = 10

const runningFile = join(resolve(root, process.env.LEVEL_SCOOP_DATA || 'data'), 'server.json')

/** What the server of this data folder wrote about itself: pid, port and host. */
const readRunning = () => {
  try {
    return JSON.parse(readFileSync(runningFile, 'utf8'))
  } catch {
    return {}
  }
}

/** Of this machine only: whose certificate it is says nothing here, so none is asked. */
const askJson = (secure, host, port) =>
  new Promise((resolve, reject) => {
    const ask = secure ? askSecurely : askPlainly
    const options = { host, port, path: '/health', timeout: 3000, rejectUnauthorized: false }
    const asked = ask(options, (answer) => {
      let text = ''
      answer.on('data', (part) => {
        text += part
      })
      answer.on('error', reject)
      answer.on('end', () => {
        try {
          resolve(JSON.parse(text))
        } catch (problem) {
          reject(problem)
        }
      })
    })
    asked.on('timeout', () => asked.destroy(new Error('no answer')))
    asked.on('error', reject)
    asked.end()
  })

/** The health answer; null where nothing listens; undefined where something else answers. */
const askHealth = async (port, running) => {
  const isNoted = running.port === Number(port)
  const own = isNoted && running.host?.includes('.') ? [running.host] : []
  const schemes = isNoted ? [running.secure === true] : [false, true]
  let isThere = false
  for (const host of ['127.0.0.1', '::1', ...own])
    for (const secure of schemes) {
      try {
        const health = await askJson(secure, host, port)
        const pid = health.pid ?? (host === running.host ? running.pid : undefined)
        if (Number.isInteger(pid) && 'protocol' in health) return { pid }
        isThere = true
      } catch (problem) {
        if (problem.code !== 'ECONNREFUSED' && problem.code !== 'EADDRNOTAVAIL') isThere = true
      }
    }
  return isThere ? undefined : null
}

/** A process that ended but wasn't yet waited for by its parent counts as gone. */
const isGone = (pid) => {
  try {
    process.kill(pid, 0)
  } catch (problem) {
    return problem.code === 'ESRCH'
  }
  try {
    return / Z /.test(readFileSync(`/proc/${pid}/stat`, 'utf8').replace(/\(.*\)/s, ''))
  } catch {
    return false
  }
}

const stop = async () => {
  const running = readRunning()
  const port = process.env.PORT || running.port || '4321'
  const health = await askHealth(port, running)
  if (health === null) return { said: words.nothingRunning(port), code: 0 }
  if (health === undefined) return { said: words.notOurs(port), code: 1 }
  console.log(words.stopping(health.pid))
  try {
    process.kill(health.pid, 'SIGTERM')
  } catch (problem) {
    if (problem.code === 'EPERM') return { said: words.mayNotStop(health.pid), code: 1 }
  }
  for (let waited = 0; waited < WAIT_S * 10; waited += 1) {
    if (isGone(health.pid)) return { said: words.stopped, code: 0 }
    await pause(100)
  }
  return { said: words.didNotStop(health.pid, WAIT_S), code: 1 }
}

const { said, code } = await stop()
console.log(said)
process.exitCode = code
