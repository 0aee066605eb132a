//! Who may ask what: checks of a request before anything of it is read.

use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};

/// The header with the run's token.
const TOKEN: &str = "x-blockwright-token";

/// What every answer carries: no foreign resource, no frame, no guessing of types, nothing kept.
pub(super) const HEADERS: [(&str, &str); 8] = [
    (
        "content-security-policy",
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; \
         connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    ),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
    ("cross-origin-resource-policy", "same-origin"),
    ("x-frame-options", "DENY"),
    (
        "permissions-policy",
        "camera=(), microphone=(), geolocation=()",
    ),
    ("cache-control", "no-store"),
];

fn text<'a>(headers: &'a HeaderMap, name: &str) -> Option<&'a str> {
    headers.get(name).map(HeaderValue::to_str)?.ok()
}

/// The token that a request carries.
pub(super) fn sent_token(headers: &HeaderMap) -> Option<&str> {
    text(headers, TOKEN)
}

/// Whether the host is this server, by an address or a name that leads nowhere else.
pub(super) fn is_our_host(headers: &HeaderMap, port: u16) -> bool {
    let mut hosts = headers.get_all(header::HOST).iter();
    let (Some(host), None) = (hosts.next(), hosts.next()) else {
        return false;
    };
    let ours = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
    host.to_str()
        .is_ok_and(|host| ours.iter().any(|our| our == host))
}

/// Why a message is not heard, `known` by its token or not; `None` if it is heard.
pub(super) fn refusal(
    method: &Method,
    headers: &HeaderMap,
    port: u16,
    known: bool,
) -> Option<(StatusCode, &'static str)> {
    if !is_our_host(headers, port) {
        return Some((StatusCode::MISDIRECTED_REQUEST, "this host is not served"));
    }
    if method != Method::POST {
        return Some((StatusCode::METHOD_NOT_ALLOWED, "messages are sent by POST"));
    }
    let site = text(headers, "sec-fetch-site");
    if site.is_some_and(|site| site != "same-origin") {
        return Some((StatusCode::FORBIDDEN, "another site may not ask"));
    }
    if let Some(origin) = headers.get(header::ORIGIN) {
        let ours = [
            format!("http://127.0.0.1:{port}"),
            format!("http://localhost:{port}"),
        ];
        let origin = origin.to_str().unwrap_or_default();
        if !ours.iter().any(|our| our == origin) {
            return Some((StatusCode::FORBIDDEN, "another origin may not ask"));
        }
    }
    let kind = text(headers, "content-type").unwrap_or_default();
    if kind.split(';').next().map(str::trim) != Some("application/json") {
        return Some((StatusCode::UNSUPPORTED_MEDIA_TYPE, "messages are JSON"));
    }
    if !known {
        return Some((
            StatusCode::UNAUTHORIZED,
            "open the address that the command printed",
        ));
    }
    None
}
