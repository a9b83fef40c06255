/**
 * What passkeys are tied to: the name of this server and the address its pages come from (WebAuthn, relying party
 * identifier and origin). Both come from NEXTAUTH_URL and never from a header, which anybody can write.
 */
export function passkeySite(): { readonly rpId: string; readonly origin: string } {
  const set = process.env['NEXTAUTH_URL']?.trim() ?? '';
  if (!URL.canParse(set))
    throw new Error('NEXTAUTH_URL has to say where this server is reached; passkeys are tied to it.');
  const { hostname, origin } = new URL(set);
  return { rpId: hostname, origin };
}
