//! The server.

use std::fmt;
use std::io;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::response::Response;
use blockwright::message::LONGEST_MESSAGE;
use tokio::net::TcpListener;

use super::address::{same, token};
use super::assets::ASSETS;
use super::folder::Folder;
use super::guard::{HEADERS, is_our_host, refusal, sent_token};
use super::talk::Talk;

/// How the page is served.
#[derive(Debug, Clone, Default)]
pub(crate) struct PageOptions {
    /// Whose files are read and written; without it nothing is.
    pub folder: Option<PathBuf>,
    /// The port; one that is free if left out.
    pub port: u16,
    /// Whether a browser is opened.
    pub open: bool,
}

/// Why there is no page.
#[derive(Debug)]
pub(crate) enum PageError {
    Folder { path: PathBuf, error: io::Error },
    Port { port: u16, error: io::Error },
    Run(io::Error),
    Token,
}

impl fmt::Display for PageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Folder { path, error } => {
                write!(f, "the folder {} cannot be used: {error}", path.display())
            }
            Self::Port { port, error } => write!(
                f,
                "port {port} cannot be used: {error}; leave --port out, and one that is free is taken"
            ),
            Self::Run(error) => write!(f, "the page cannot be served: {error}"),
            Self::Token => f.write_str("the system gives no random numbers for the token"),
        }
    }
}

/// What every request may need.
struct Served {
    port: u16,
    token: String,
    /// A key that opens the page once, for the address that a browser is started with: others on this
    /// machine may see the arguments of programs.
    once: Mutex<Option<String>>,
    talk: Talk,
}

/// How long answers that are under way may take once the command is to end.
const LAST_ANSWERS: Duration = Duration::from_millis(800);

/// Serves the page until the command is interrupted; `ready` is given its address.
pub(crate) fn serve(options: &PageOptions, ready: &mut dyn FnMut(&str)) -> Result<(), PageError> {
    let folder = options.folder.as_ref().map(|path| {
        Folder::open(path).map_err(|error| PageError::Folder {
            path: path.clone(),
            error,
        })
    });
    let folder = folder.transpose()?;
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(PageError::Run)?;
    runtime.block_on(async {
        let port = options.port;
        let at = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let listener = TcpListener::bind(at)
            .await
            .map_err(|error| PageError::Port { port, error })?;
        let port = listener.local_addr().map_err(PageError::Run)?.port();
        let served = Arc::new(Served {
            port,
            token: token().map_err(|_| PageError::Token)?,
            once: Mutex::new(None),
            talk: Talk::new(folder),
        });
        ready(&format!("http://127.0.0.1:{port}/#{}", served.token));
        if options.open {
            open_browser(&served)?;
        }
        let app = Router::new()
            .fallback(respond)
            .with_state(Arc::clone(&served));
        let server = axum::serve(listener, app).with_graceful_shutdown(interrupted());
        tokio::select! {
            done = server => done.map_err(PageError::Run),
            () = async { interrupted().await; tokio::time::sleep(LAST_ANSWERS).await } => Ok(()),
        }
    })
}

fn open_browser(served: &Served) -> Result<(), PageError> {
    let key = token().map_err(|_| PageError::Token)?;
    let address = format!("http://127.0.0.1:{}/#{key}", served.port);
    *served.once.lock().unwrap_or_else(PoisonError::into_inner) = Some(key);
    // No browser is no failure: the address was printed.
    let _ = open::that_detached(address);
    Ok(())
}

/// Returns when the command is asked to end.
async fn interrupted() {
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminated) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = tokio::signal::ctrl_c() => {}
                _ = terminated.recv() => {}
            }
            return;
        }
    }
    if tokio::signal::ctrl_c().await.is_err() {
        std::future::pending::<()>().await;
    }
}

async fn respond(State(served): State<Arc<Served>>, request: Request) -> Response {
    let (head, body) = request.into_parts();
    if head.uri.path() == "/message" {
        return match message(served, &head.method, &head.headers, body).await {
            Ok(answer) => answered(StatusCode::OK, "application/json", answer),
            Err((status, text)) => plain(status, text),
        };
    }
    if !is_our_host(&head.headers, served.port) {
        return plain(StatusCode::MISDIRECTED_REQUEST, "this host is not served");
    }
    if head.method != Method::GET && head.method != Method::HEAD {
        return plain(StatusCode::METHOD_NOT_ALLOWED, "only messages are sent");
    }
    let asset = ASSETS.iter().find(|asset| asset.path == head.uri.path());
    match asset {
        Some(asset) => answered(StatusCode::OK, asset.kind, asset.text),
        None => plain(StatusCode::NOT_FOUND, "there is nothing here"),
    }
}

async fn message(
    served: Arc<Served>,
    method: &Method,
    headers: &HeaderMap,
    body: Body,
) -> Result<String, (StatusCode, &'static str)> {
    let sent = sent_token(headers);
    let by_key = sent.is_some_and(|sent| {
        let once = served.once.lock().unwrap_or_else(PoisonError::into_inner);
        once.as_deref().is_some_and(|key| same(sent, key))
    });
    let known = by_key || sent.is_some_and(|sent| same(sent, &served.token));
    if let Some(refused) = refusal(method, headers, served.port, known) {
        return Err(refused);
    }
    let bytes = to_bytes(body, LONGEST_MESSAGE)
        .await
        .map_err(|_| (StatusCode::PAYLOAD_TOO_LARGE, "a message has at most 1 MiB"))?;
    let text = String::from_utf8(bytes.to_vec())
        .map_err(|_| (StatusCode::BAD_REQUEST, "messages are JSON in UTF-8"))?;
    if by_key {
        // The key is changed into the token, and is worth nothing from now on.
        let mut once = served.once.lock().unwrap_or_else(PoisonError::into_inner);
        if once.take().is_none() {
            return Err((
                StatusCode::UNAUTHORIZED,
                "open the address that the command printed",
            ));
        }
        let token = &served.token;
        return Ok(serde_json::json!({"status": "ok", "token": token}).to_string());
    }
    // Drafting keeps a thread busy for some milliseconds, a lay for seconds.
    tokio::task::spawn_blocking(move || served.talk.answer(&text))
        .await
        .map_err(|_| (StatusCode::INTERNAL_SERVER_ERROR, "no answer was made"))
}

fn plain(status: StatusCode, text: &'static str) -> Response {
    answered(status, "text/plain; charset=utf-8", text)
}

fn answered(status: StatusCode, kind: &'static str, body: impl Into<Body>) -> Response {
    let mut response = Response::new(body.into());
    *response.status_mut() = status;
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(kind));
    for (name, value) in HEADERS {
        headers.insert(
            HeaderName::from_static(name),
            HeaderValue::from_static(value),
        );
    }
    response
}
