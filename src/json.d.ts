// JSON files are data from outside: their shape is checked where they are used
declare module "*.json" {
  const value: unknown
  export default value
}
