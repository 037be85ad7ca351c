// The bundler turns a style sheet into a file of its own and the import into its address.
declare module "*.css" {
  const address: string;
  export default address;
}
