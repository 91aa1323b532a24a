# The bot on a server, its logbook in the volume /data:
#   docker build -t glaze-room .
#   docker run -d --restart unless-stopped --env-file .env -v glaze-room:/data -p 127.0.0.1:8017:8017 glaze-room
FROM node:24-slim
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
COPY own-node own-node
RUN npm ci --omit=dev
COPY . .
RUN npm run build && mkdir /data && chown node:node /data
ENV NODE_ENV=production DATABASE_FILE=/data/studio.db ROOM_BIND=0.0.0.0
USER node
VOLUME /data
EXPOSE 8017
CMD ["node", "dist/run/main.js"]
