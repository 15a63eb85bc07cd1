import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { SwaggerModule } from '@nestjs/swagger';
import { buildOpenApi } from './openapi.js';

/** The contract at /api/openapi.json, and at /api/docs to read and to try. */
export function serveDocs(app: NestFastifyApplication): void {
  SwaggerModule.setup('docs', app, () => buildOpenApi(app), {
    useGlobalPrefix: true,
    jsonDocumentUrl: 'openapi.json',
    raw: ['json'],
    customSiteTitle: 'Traybook: the interface for programs',
    customfavIcon: 'data:,',
    customCss: '.swagger-ui .topbar { display: none }',
    swaggerOptions: { docExpansion: 'none', filter: true, persistAuthorization: false },
  });
}
