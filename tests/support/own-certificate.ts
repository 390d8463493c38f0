/** Certificates made for one test, by openssl. */
import { execFileSync, spawnSync } from 'node:child_process'
import { join } from 'node:path'

export const hasOpenssl = spawnSync('openssl', ['version'], { stdio: 'ignore' }).status === 0

const NAMES = 'subjectAltName=DNS:station.test,DNS:localhost,IP:127.0.0.1'
const CURVE = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1']

/** A self-signed certificate and its key, for two days. @param lock a passphrase for the key */
export const ownCertificate = (
  folder: string,
  name: string,
  lock?: string,
): { readonly cert: string; readonly key: string } => {
  const cert = join(folder, `${name}-cert.pem`)
  const key = join(folder, `${name}-key.pem`)
  const locked = lock === undefined ? ['-nodes'] : ['-passout', `pass:${lock}`]
  const made = ['req', '-x509', ...CURVE, ...locked, '-keyout', key, '-out', cert]
  const said = ['-days', '2', '-subj', '/CN=station.test', '-addext', NAMES]
  execFileSync('openssl', [...made, ...said], { stdio: 'ignore' })
  return { cert, key }
}
