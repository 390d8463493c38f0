'use client'

import { titles } from '#lib/words/house/titles-en.ts'

export default function GlobalError() {
  return (
    <html lang="en">
      <body>
        <main>
          <title>{titles.of(titles.failed)}</title>
          <h1>{titles.failed}</h1>
          <p>{titles.failedHint}</p>
          <button type="button" onClick={() => window.location.reload()}>
            {titles.again}
          </button>
        </main>
      </body>
    </html>
  )
}
