declare module "virtual:alula-catalogue" {
  const rooms: readonly {
    readonly room: string
    readonly heading: string
    readonly solvers: readonly { readonly name: string; readonly title: string }[]
  }[]
  export default rooms
}
