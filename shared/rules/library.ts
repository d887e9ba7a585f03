import australia from '../../data/rules/australia.json' with { type: 'json' }
import canada from '../../data/rules/canada.json' with { type: 'json' }
import eu from '../../data/rules/eu.json' with { type: 'json' }
import uk from '../../data/rules/uk.json' with { type: 'json' }
import usFederal from '../../data/rules/us-federal.json' with { type: 'json' }
import type { Law } from '../fields/place.ts'
import type { Jurisdiction } from './types.ts'

// JSON widens literals to strings; a test holds each file to the strict schema.
export const JURISDICTIONS: Readonly<Record<Law, Jurisdiction>> = {
  'us-federal': usFederal as Jurisdiction,
  eu: eu as Jurisdiction,
  uk: uk as Jurisdiction,
  canada: canada as Jurisdiction,
  australia: australia as Jurisdiction,
}

export {
  CERTIFICATE_IDS,
  CERTIFICATES,
  type CertificateId,
  isCertificate,
} from './certificate-names.ts'
