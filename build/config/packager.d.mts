/** Settings of the packager; their shape is its schema's, which a test holds them against. */
declare const settings: Readonly<Record<string, unknown>>;
export default settings;
