import type { Metadata } from 'next'
import { titles } from '#lib/words/house/titles-en.ts'

export const metadata: Metadata = { title: titles.of(titles.notFound) }

export default function NotFound() {
  return (
    <main>
      <h1>{titles.notFound}</h1>
      <p>{titles.notFoundHint}</p>
      <a href="/">{titles.toStart}</a>
    </main>
  )
}
