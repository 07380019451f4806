# Reference results for the growth of counts and for places learned from together. usage: Rscript r_count_and_mixed_reference.R OUT.json
# Data are SYNTHETIC, drawn here with fixed seeds. R 4.2.2, nlme 3.1-162 (Debian 12).
suppressMessages({library(nlme); library(jsonlite)})
out <- list(R = R.version.string, nlme = as.character(packageVersion("nlme")))

# Counts that only grow, mean L exp(r u): new counts between inspections are Poisson; at fixed r a Poisson regression with log link,
# intercept log L and an offset. glm gives L, its standard error and the log likelihood; optimize the best r.
new_counts <- function(y) c(y[1], diff(y))
offset_at <- function(u, r) log(c(exp(r * u[1]), diff(exp(r * u))))
fit_at <- function(u, y, r) {
  d <- data.frame(n = new_counts(y), o = offset_at(u, r))
  m <- glm(n ~ 1 + offset(o), family = poisson(link = "log"), data = d, control = glm.control(epsilon = 1e-14, maxit = 100))
  L <- exp(unname(coef(m)))
  list(rate = r, level = L, se_level = L * sqrt(vcov(m)[1, 1]), logLik = as.numeric(logLik(m)))
}
series <- list(list(t = c(0, 1, 2, 3), y = c(2, 3, 5, 9)), list(t = c(0, 1, 2.5, 4, 5), y = c(1, 1, 4, 6, 11)), list(t = c(0, 2, 3), y = c(4, 7, 8)))
out$counts <- lapply(series, function(s) {
  span <- max(s$t) - min(s$t); u <- (s$t - max(s$t)) / span
  best <- optimize(function(lr) fit_at(u, s$y, exp(lr))$logLik, c(-4, 3), maximum = TRUE, tol = 1e-10)
  list(t = s$t, y = s$y, u = u, at = lapply(c(0.2, 0.7, 1.5, 3), function(r) fit_at(u, s$y, r)), best_log_rate = best$maximum, best_logLik = best$objective)
})

# Twelve places growing straight in time, read six times; three more read twice only. lme with random level and slope by REML.
set.seed(20260101)
times <- 0:5
rows <- do.call(rbind, lapply(1:15, function(j) {
  slope <- exp(log(0.6) + 0.25 * rnorm(1)); level <- 1.5 + 0.8 * runif(1)
  t <- if (j <= 12) times else c(3, 5)
  data.frame(place = j, t = t, value = round(level + slope * t + 0.08 * rnorm(length(t)), 4))
}))
limit <- 10
m <- lme(value ~ t, random = ~ t | place, data = rows, control = lmeControl(opt = "optim", maxIter = 500, msMaxIter = 500))
b <- coef(m)
out$mixed <- list(rows = rows, limit = limit, noise = 0.08, fixed = as.list(unname(fixef(m))), sd = as.list(as.numeric(VarCorr(m)[, "StdDev"])),
  crossing = as.list((limit - b[, 1]) / b[, 2]), line = as.list(sapply(1:15, function(j) { d <- rows[rows$place == j, ]; k <- coef(lm(value ~ t, d)); unname((limit - k[1]) / k[2]) })))
write(toJSON(out, auto_unbox = TRUE, digits = 12, pretty = FALSE, dataframe = "columns"), commandArgs(TRUE)[1])
