import { Buffer } from 'node:buffer'
import medium from '@expo-google-fonts/alegreya-sans/500Medium/AlegreyaSans_500Medium.ttf'
import bold from '@expo-google-fonts/alegreya-sans/700Bold/AlegreyaSans_700Bold.ttf'
import html from '../../web/dist/lengthwise.html'
import manifest from '../../web/served/lengthwise.webmanifest'
import offline from '../../web/served/offline.txt'

/** The typeface of the map, carried inside the command. */
export const fonts = (): { medium: Uint8Array; bold: Uint8Array } => ({
  medium: bytes(medium),
  bold: bytes(bold),
})

/** The page, carried inside the command. */
export const page = (): string => html

/** What a server sends beside the page, asked for only when someone keeps the page on a device: address -> type and text. */
export const beside: Readonly<Record<string, readonly [type: string, text: string]>> = {
  '/lengthwise.webmanifest': ['application/manifest+json', manifest],
  '/offline.js': ['text/javascript; charset=utf-8', offline],
}

const bytes = (base64: string): Uint8Array => new Uint8Array(Buffer.from(base64, 'base64'))
