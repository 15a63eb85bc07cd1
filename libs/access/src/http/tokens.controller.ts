import { Body, Controller, Delete, Get, HttpCode, Param, Post } from '@nestjs/common';
import {
  ApiCreatedResponse,
  ApiNoContentResponse,
  ApiOkResponse,
  ApiOperation,
  ApiTags,
} from '@nestjs/swagger';
import { type Actor, IdPipe } from '#lib/platform';
import { CreateToken } from '../app/create-token.js';
import { ListTokens } from '../app/list-tokens.js';
import { RevokeToken } from '../app/revoke-token.js';
import { CurrentActor, Needs } from './decorators.js';
import { CreateTokenDto, NewTokenDto, TokensDto } from './tokens.dto.js';

@ApiTags('session')
@Controller('session/tokens')
export class TokensController {
  constructor(
    private readonly createToken: CreateToken,
    private readonly listTokens: ListTokens,
    private readonly revokeToken: RevokeToken,
  ) {}

  @Get()
  @Needs('tokens.own')
  @ApiOperation({ operationId: 'listTokens', summary: 'Your personal access tokens' })
  @ApiOkResponse({ type: TokensDto })
  async list(@CurrentActor() actor: Actor): Promise<TokensDto> {
    return { items: await this.listTokens.run(actor) };
  }

  @Post()
  @Needs('tokens.own')
  @ApiOperation({
    operationId: 'createToken',
    summary: 'Make a personal access token for a program',
    description: 'It may do what you may do. Its secret is shown in this answer and never again.',
  })
  @ApiCreatedResponse({ type: NewTokenDto })
  async create(@CurrentActor() actor: Actor, @Body() body: CreateTokenDto): Promise<NewTokenDto> {
    return this.createToken.run(actor, body);
  }

  @Delete(':id')
  @Needs('tokens.own')
  @HttpCode(204)
  @ApiOperation({ operationId: 'revokeToken', summary: 'Revoke one of your tokens at once' })
  @ApiNoContentResponse()
  async revoke(@CurrentActor() actor: Actor, @Param('id', IdPipe) id: string): Promise<void> {
    await this.revokeToken.run(actor, id);
  }
}
