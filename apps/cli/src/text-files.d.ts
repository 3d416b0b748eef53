// files that the build puts inside the command as text
declare module '*.ttf' {
  const base64: string
  export default base64
}
declare module '*.html' {
  const text: string
  export default text
}
declare module '*.txt' {
  const text: string
  export default text
}
declare module '*.webmanifest' {
  const text: string
  export default text
}
