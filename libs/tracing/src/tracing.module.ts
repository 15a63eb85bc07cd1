import { Module } from '@nestjs/common';
import { TracingController } from './http/tracing.controller.js';
import { LotReader } from './queries/lot-reader.js';
import { TraceLot } from './queries/trace-lot.js';
import { TraceVisits } from './queries/trace-visits.js';

@Module({ controllers: [TracingController], providers: [LotReader, TraceLot, TraceVisits] })
export class TracingModule {}
