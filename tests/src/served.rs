//! The service on a folder, without a window.

use lapwork_service::desktop;
use lapwork_service::disk::Disk;
use lapwork_service::service::Service;
use lapwork_service::store::Store;
use std::path::Path;

/// The service for a data folder, on this machine.
pub fn serve(folder: impl AsRef<Path>) -> Service {
    Service::new(desktop::store(folder.as_ref()), desktop::host())
}

/// The service for a data folder on a disk of the test's.
pub fn serve_on(folder: impl AsRef<Path>, disk: impl Disk + 'static) -> Service {
    let store = Store::on(folder.as_ref(), Box::new(disk));
    Service::new(store, desktop::host())
}
