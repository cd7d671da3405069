# Compiled ahead for linux-x64, whatever the machine that builds it.
FROM --platform=linux/amd64 mcr.microsoft.com/dotnet/sdk:10.0 AS build
WORKDIR /build
COPY Directory.Build.props Directory.Build.targets Directory.Packages.props .editorconfig ./
COPY schemas/ schemas/
COPY src/ src/
RUN dotnet publish src/FindingRules.Cli -c Release -p:RestoreLockedMode=true -p:ForContainer=true -o /app

FROM --platform=linux/amd64 mcr.microsoft.com/dotnet/aspnet:10.0
COPY --from=build /app /app
RUN ln -s /app/FindingRules.Cli /usr/local/bin/findingrules && mkdir /packs /ledger && chown $APP_UID /ledger
# Without diagnostics the program writes nothing, so the file system may be mounted read-only.
ENV ASPNETCORE_HTTP_PORTS= \
    DOTNET_EnableDiagnostics=0 \
    Logging__Console__FormatterName=json \
    FindingRules__Ledger=/ledger/findingrules-ledger.db
USER $APP_UID
VOLUME /packs /ledger
EXPOSE 8080
HEALTHCHECK --interval=30s --timeout=5s --start-period=10s --retries=3 \
    CMD ["findingrules", "serve", "--check", "http://127.0.0.1:8080"]
ENTRYPOINT ["findingrules"]
CMD ["serve", "/packs", "--urls", "http://+:8080"]
