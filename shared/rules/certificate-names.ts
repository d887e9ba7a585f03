import named from '../../data/rules/certificates.json' with { type: 'json' }

export type CertificateId = keyof typeof named.certificates

export const CERTIFICATES: Readonly<Record<CertificateId, string>> = named.certificates

export const CERTIFICATE_IDS = Object.keys(named.certificates) as [
  CertificateId,
  ...CertificateId[],
]

/** Whether a text is the id of a certificate that the rules know. */
export const isCertificate = (id: string): id is CertificateId => Object.hasOwn(CERTIFICATES, id)
