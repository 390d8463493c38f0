import { useEffect, useState } from 'react'
import { encode } from 'uqr'
import styles from '#components/start/start.module.css'
import { useStartWords } from '#components/start/words.tsx'

const isUrl = (value: unknown): value is { readonly url: string } =>
  typeof value === 'object' && value !== null && 'url' in value && typeof value.url === 'string'

/** The addresses that the server answered with; none of what it didn't. */
const urlsOf = (answer: unknown): readonly string[] =>
  typeof answer === 'object' &&
  answer !== null &&
  'addresses' in answer &&
  Array.isArray(answer.addresses)
    ? answer.addresses.filter(isUrl).map(({ url }) => url)
    : []

/** Every dark module as a square of a path. */
const pathOf = (dark: readonly (readonly boolean[])[]): string =>
  dark.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ''))).join('')

function QrCode({ address }: { readonly address: string }) {
  const words = useStartWords()
  const { data, size } = encode(address, { ecc: 'M', border: 3 })
  return (
    <svg
      className={styles.qr}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={words.qr(address)}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={pathOf(data)} fill="#000" />
    </svg>
  )
}

/** How tablets come to these screens: the address as a QR code, and three steps. */
export function TabletsCard() {
  const words = useStartWords()
  const [urls, setUrls] = useState<readonly string[] | null>(null)
  useEffect(() => {
    let isShown = true
    void fetch('/addresses')
      .then((answer) => answer.json())
      .catch(() => null)
      .then((answer: unknown) => {
        if (isShown) setUrls(urlsOf(answer))
      })
    return () => {
      isShown = false
    }
  }, [])
  const [address, ...others] = urls ?? []
  return (
    <section className={styles.tablets} aria-labelledby="tablets-title">
      <div className={styles.tabletsWords}>
        <h2 id="tablets-title">{words.tablets}</h2>
        <ol>
          {words.steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </div>
      <div className={styles.address}>
        {address ? (
          <>
            <QrCode address={address} />
            <p>
              <strong>{address}</strong>
            </p>
            {others.map((other) => (
              <p key={other}>
                {words.otherAddresses} {other}
              </p>
            ))}
          </>
        ) : (
          <p>{urls === null ? words.finding : words.noAddress}</p>
        )}
      </div>
    </section>
  )
}
