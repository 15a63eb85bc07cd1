import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { DocumentBuilder, type OpenAPIObject, SwaggerModule } from '@nestjs/swagger';
import { SESSION_COOKIE } from '#lib/access';
import { describeProblems } from './openapi-problems.js';
import { TAGS } from './openapi-tags.js';

const CAUTION =
  'Figures are planning aids. Instructions for use, local rules and licensed practice come first.';

const DESCRIPTION = [
  CAUTION,
  '',
  'The book of what goes on the tray, what it cost and which lot it came from.',
  '',
  '- Quantities and money are decimals in quotes, e.g. "0.06"; dates are ISO 8601.',
  '- Every request that books something carries an `Idempotency-Key`: sent twice, it is done once.',
  '- Long lists come in pages: send `nextCursor` back as `cursor` for the next one.',
  '- Errors are problem details (RFC 9457). `code` is stable, `errors` names the fields at fault.',
  '- `x-permission` says which permission an operation needs.',
].join('\n');

/** The OpenAPI 3.1 document of the service, made from the very code that answers. */
export function buildOpenApi(app: NestFastifyApplication): OpenAPIObject {
  const builder = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Traybook')
    .setVersion('0.1.0')
    .setDescription(DESCRIPTION)
    .setLicense('AGPL-3.0-or-later', 'https://www.gnu.org/licenses/agpl-3.0.html')
    .addServer('/', 'This service')
    .addCookieAuth(
      SESSION_COOKIE,
      { type: 'apiKey', in: 'cookie', name: SESSION_COOKIE },
      'session',
    )
    .addBearerAuth(
      { type: 'http', scheme: 'bearer', description: 'A personal token, tb_…' },
      'token',
    );
  const document = SwaggerModule.createDocument(app, builder.build());
  const used = new Set(
    Object.values(document.paths).flatMap((path) =>
      Object.values(path).flatMap((operation) => (operation as { tags?: string[] }).tags ?? []),
    ),
  );
  document.tags = [...used].map((name) => ({ name, description: TAGS[name] ?? '' }));
  return describeProblems(document);
}
