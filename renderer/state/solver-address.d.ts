/** Address of the solver's worker; the build makes it (build/config/vite.config.ts). */
declare module 'virtual:solver-worker' {
  const address: string;
  export default address;
}
