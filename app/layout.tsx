import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import '#components/ui/tokens.css'
import type { Viewport } from 'next'
import type { ReactNode } from 'react'

export const viewport: Viewport = { width: 'device-width', initialScale: 1 }

export default function Layout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  )
}
